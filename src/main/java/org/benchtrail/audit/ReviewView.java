package org.benchtrail.audit;

import java.util.List;
import java.util.Map;
import org.benchtrail.core.audit.AuditAct.Marked;
import org.benchtrail.core.audit.Mark;
import org.benchtrail.platform.Option;
import org.benchtrail.ticket.EntryLine;
import org.benchtrail.ticket.record.RecordView;
import org.jspecify.annotations.Nullable;

/**
 * One review of one ticket.
 *
 * @param wentOn whether something was recorded on the ticket after the entry that the lot froze
 * @param despite why the reviewer is not independent; empty if they are
 * @param rows one for each requirement
 * @param now the one to mark next, or that was asked for; null if all are marked
 * @param notAsked what is still to be marked and the gate did not ask for
 * @param signals none until all marks of the lot are final
 * @param record the ticket as it was, without names; until it is signed nothing on it leads to where they stand
 */
public record ReviewView(
        String lot,
        String ticket,
        int turn,
        String title,
        boolean wentOn,
        List<String> despite,
        boolean signed,
        int marked,
        List<Row> rows,
        @Nullable Now now,
        List<NotAsked> notAsked,
        List<SignalViews.Shown> signals,
        RecordView record) {

    /** @param mark in words; empty while there is none */
    public record Row(String code, String step, String title, String mark, String remark, boolean current) {}

    /** @param reason why the gate asked nothing */
    public record NotAsked(String title, String reason) {}

    /**
     * @param gate what the gate said
     * @param usual name of the class that a defect usually has here
     * @param evidence the entries that it usually rests on
     */
    public record Now(
            String code,
            String title,
            String gate,
            String question,
            String usual,
            List<EntryLine> evidence,
            List<MarkOption> marks,
            List<Option> classes) {}

    /** @param key that sets it */
    public record MarkOption(int key, String value, String words, String meaning) {}

    static List<MarkOption> marks() {
        return List.of(Mark.values()).stream()
                .map(m -> new MarkOption(m.ordinal() + 1, m.name(), m.words(), m.meaning()))
                .toList();
    }

    static String words(Map<String, Marked> marks, String code) {
        Marked mark = marks.get(code);
        return mark == null ? "" : LotViews.words(mark);
    }
}
