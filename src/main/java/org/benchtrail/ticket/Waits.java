package org.benchtrail.ticket;

import java.util.ArrayList;
import java.util.List;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.Role;
import org.benchtrail.core.method.StandingFact;
import org.benchtrail.core.method.Step;
import org.benchtrail.core.method.desk.AskKind;
import org.benchtrail.core.method.desk.Asked;
import org.benchtrail.core.method.desk.Asks;
import org.benchtrail.core.method.desk.SentBack;
import org.benchtrail.core.method.document.Signatory;
import org.benchtrail.core.method.document.Signed;
import org.jspecify.annotations.Nullable;

/**
 * What on a ticket waits for those who judge the work, in words.
 *
 * @param supervisor null if nothing waits for a supervisor
 * @param mentor null if nothing waits for a mentor
 */
record Waits(@Nullable String supervisor, @Nullable String mentor) {

    static Waits of(JobSheet sheet) {
        List<String> supervisor = new ArrayList<>();
        List<String> mentor = new ArrayList<>();
        for (StandingFact<Asked> asked : Asks.waiting(sheet)) {
            AskKind what = asked.fact().what();
            if (what != AskKind.MENTOR) {
                supervisor.add(what.words());
            }
            if (what == AskKind.MENTOR || (what == AskKind.APPROVAL && sheet.workedBy(Role.TRAINEE))) {
                mentor.add(what.words());
            }
        }
        if (sheet.course().isOpen() && !sheet.lessenings().isEmpty()) {
            supervisor.add("agreement to a correction");
        }
        if (isToBeSigned(sheet)) {
            mentor.add("a signature");
        }
        return new Waits(words(supervisor), words(mentor));
    }

    /** A trainee worked on it, its assignee has signed, and no mentor has answered that. */
    private static boolean isToBeSigned(JobSheet sheet) {
        if (!sheet.course().isOpen() || sheet.step() != Step.DOCUMENT || !sheet.workedBy(Role.TRAINEE)) {
            return false;
        }
        int signed = signed(sheet, Signatory.ASSIGNEE);
        int answered = Math.max(
                signed(sheet, Signatory.MENTOR),
                sheet.latestOfRound(SentBack.class).map(StandingFact::entry).orElse(0));
        return signed > answered;
    }

    /** Entry of the last signature of that kind in this round; 0 if there is none. */
    private static int signed(JobSheet sheet, Signatory who) {
        return sheet.latest(
                        Signed.class,
                        s -> s.round() == sheet.round() && s.fact().signatory() == who)
                .map(StandingFact::entry)
                .orElse(0);
    }

    private static @Nullable String words(List<String> waiting) {
        return waiting.isEmpty()
                ? null
                : String.join("; ", waiting.stream().distinct().toList());
    }
}
