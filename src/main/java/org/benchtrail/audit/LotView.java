package org.benchtrail.audit;

import io.quarkus.qute.RawString;
import java.util.List;
import org.benchtrail.core.audit.AuditLot;
import org.benchtrail.core.audit.LotResult;
import org.benchtrail.core.audit.Outlook;
import org.benchtrail.platform.Option;
import org.jspecify.annotations.Nullable;

/**
 * One lot.
 *
 * @param progress on one line: frozen, 41 of 59 reviewed
 * @param plan in lines, as it was stated
 * @param facts of period, freeze and draw, in pairs
 * @param outlook of the random part; null where there is none yet
 * @param check of the draw; null before it
 * @param own reviews that are the viewer's to finish
 * @param givenBack by person, which reviews they declined
 * @param open reviews that nobody has
 * @param left how many of them the viewer may take, and how long that takes; empty if none
 * @param result null until every review is signed, so that no reader is led by another
 * @param obstacles what stands between the lot and its conclusion
 * @param signals empty until all marks are final
 * @param stuck reviews that nobody is left for, in sentences
 */
public record LotView(
        String id,
        AuditLot.State state,
        String progress,
        List<String> plan,
        List<Pair> facts,
        List<Part> parts,
        @Nullable Shown outlook,
        @Nullable Check check,
        List<ReviewLine> own,
        List<ReviewLine> others,
        List<GivenBack> givenBack,
        int open,
        String left,
        List<Option> reviewers,
        List<DifferenceLine> differences,
        @Nullable Result result,
        List<AddendumLine> addenda,
        List<String> obstacles,
        @Nullable Conclusion conclusion,
        Next next,
        List<SignalViews.SignalLine> signals,
        List<Chosen> chosen,
        List<String> stuck) {

    /** How much of what was asked for has been written. */
    public String mended() {
        long written = addenda.stream().filter(a -> a.entry() != null).count();
        return written + " of " + addenda.size() + " asked for " + (addenda.size() == 1 ? "is" : "are") + " written.";
    }

    /** What was asked for, is over its time, and may be closed by the viewer. */
    public List<AddendumLine> closable() {
        return addenda.stream().filter(a -> !a.closable().isEmpty()).toList();
    }

    public record Pair(String name, String text) {}

    /** A stratum: how many there are, are taken, and are reviewed. */
    public record Part(String title, int items, int drawn, int signed, String how) {}

    /** @param curve by which the plan accepts; null where it accepts all that would be drawn */
    public record Shown(
            String part, Outlook outlook, @Nullable RawString curve) {
        /** A chance in percent, never rounded to certainty. */
        public String percent(double chance) {
            double tenths = Math.round(chance * 1000) / 10.0;
            if (chance > 0 && chance < 1) {
                tenths = Math.min(99.9, Math.max(0.1, tenths));
            }
            return tenths + " %";
        }
    }

    /**
     * The draw done again.
     *
     * @param again seed from the stored head and plan
     * @param altered which of plan, list, head, seed and order is not as the log sealed it, in sentences
     * @param headHash of the head alone, by which somebody sees that it is typed as it was; of the plan likewise
     * @param tickets how many there are in the lot
     * @param list all of them, or of a large lot the drawn ones, with their ranks
     */
    public record Check(
            String seed,
            String again,
            List<String> altered,
            String head,
            String headHash,
            String planHash,
            long leaves,
            int tickets,
            List<Listed> list) {
        /** What is said first. */
        public String words() {
            return altered.isEmpty()
                    ? "The draw holds: plan, list, head, seed and order are what the log sealed, and give one another."
                    : "The draw does not hold.";
        }

        /** Whether the list is all of the lot. */
        public boolean whole() {
            return list.size() == tickets;
        }

        /** What the list is of. */
        public String listed() {
            return (whole() ? "All " : "The " + list.size() + " drawn ones of ") + tickets + " tickets of the lot";
        }
    }

    /** @param drawn whether it is looked at */
    public record Listed(String part, String ticket, String rank, boolean drawn) {}

    /** @param link empty where the viewer may not read it */
    public record ReviewLine(String ticket, String what, String who, String state, String link) {}

    /** @param what of it may be read: which, and why once no reader is led by it any more */
    public record GivenBack(String who, int count, String what) {}

    public record DifferenceLine(
            String ticket,
            String requirement,
            String title,
            String first,
            String second,
            String remarks,
            String settled) {
        public boolean open() {
            return settled.isEmpty();
        }

        /** By which a form says what it is about. */
        public String of() {
            return ticket + "/" + requirement;
        }
    }

    /**
     * @param words what the interval means
     * @param defects by requirement
     */
    public record Result(LotResult it, String words, List<DefectLine> defects, List<Agreement> agreements) {
        public List<Agreement> getTalks() {
            return agreements.stream().filter(Agreement::talk).toList();
        }
    }

    public record DefectLine(
            String ticket, String requirement, String title, String defect, String remark, boolean askable) {
        /** By which a form says what it is about. */
        public String of() {
            return ticket + "/" + requirement;
        }

        /** Before the ids of its fields. */
        public String at() {
            return "ask/" + of();
        }
    }

    /**
     * Of two readers.
     *
     * @param one name of the reader of the rows
     * @param other name of the reader of the columns
     * @param of their accounts, by which a form says whose talk it is
     * @param kappa in words; why not, where there is none
     * @param rewrite which question is to be written anew, in sentences; none where they need no talk
     * @param marks heads of the table
     * @param rows of the table: the mark of the one and the counts of the other's
     */
    public record Agreement(
            String one,
            String other,
            String of,
            long pairs,
            long agreed,
            String kappa,
            List<String> rewrite,
            List<String> marks,
            List<Row> rows,
            boolean talk) {
        /** Before the ids of its field. */
        public String at() {
            return "talk/" + of;
        }

        public record Row(String mark, List<Long> counts) {}
    }

    /** @param closable what a form to close it says that it is about; empty where the viewer may not */
    public record AddendumLine(
            String ticket,
            String title,
            String asked,
            String of,
            String due,
            @Nullable Integer entry,
            String words,
            String closable) {
        /** Before the ids of its fields. */
        public String at() {
            return "close/" + closable;
        }
    }

    public record Conclusion(String words, String stamp) {}

    /**
     * What follows where a lot is not accepted, and what may be added to it.
     *
     * @param rest tickets that are to be drawn; 0 where none are
     * @param decides whether the viewer may have it done
     * @param doubling whether the next plan is to draw twice as many
     * @param choosing whether the viewer may have one more ticket looked at
     */
    public record Next(int rest, boolean decides, boolean doubling, boolean choosing) {}

    /** A ticket that somebody chose to have looked at. */
    public record Chosen(String ticket, String why, String state) {}
}
