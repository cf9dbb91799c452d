package org.benchtrail.ticket.theorize;

import static org.benchtrail.ticket.form.FieldGroup.answer;
import static org.benchtrail.ticket.form.FieldGroup.given;
import static org.benchtrail.ticket.form.FieldGroup.special;

import java.util.Map;
import java.util.Optional;
import org.benchtrail.core.diagnosis.Cause;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.StandingFact;
import org.benchtrail.core.method.test.CheckPlanned;
import org.benchtrail.core.method.theorize.ObviousQuestioned;
import org.benchtrail.core.method.theorize.TheoryChosen;
import org.benchtrail.core.method.theorize.TheoryStated;
import org.benchtrail.ticket.form.FieldGroup;
import org.benchtrail.ticket.form.Posting;
import org.benchtrail.ticket.form.SheetForm;

/** The obvious questioned, theories stated, and one of them chosen: by its entry, as a cause of the catalogue, or as a new one. */
public final class TheorizeForm {
    /** Before the id of a cause among the theories to choose from. */
    static final String CAUSE = "cause:";

    private static final String NEW = "new";

    private static final FieldGroup<TheoryChosen> CHOICE = answer("choice", TheoryChosen.class);

    public static final SheetForm FORM = SheetForm.of(
            "theorize",
            answer("obvious", ObviousQuestioned.class),
            special("theory", TheoryStated.class, TheorizeForm::theory),
            given("othertheory", TheoryStated.class),
            CHOICE.readBy(TheorizeForm::choice),
            special("check", CheckPlanned.class, TheorizeForm::firstCheck));

    private TheorizeForm() {}

    private static String chosen(Posting posting) {
        String picked = posting.form().text("choice.theory");
        return picked.isEmpty() && posting.form().given("theory") ? NEW : picked;
    }

    private static void theory(Posting posting) {
        boolean isNew = chosen(posting).equals(NEW);
        if (posting.form().given("theory")) {
            posting.form().read("theory", TheoryStated.class).ifPresent(posting::add);
            if (isNew) {
                chooseLast(posting);
            }
        } else if (isNew) {
            posting.form().refuse("theory.text", "Say what the cause could be, or choose one of the theories above.");
        }
    }

    private static void choice(Posting posting) {
        String chosen = chosen(posting);
        if (chosen.startsWith(CAUSE)) {
            cause(posting, chosen.substring(CAUSE.length()));
        } else if (chosen.matches("\\d+")) {
            CHOICE.reader().accept(posting);
        }
    }

    /** A cause of the catalogue becomes a theory when it is chosen; one that was stated before is not stated again. */
    private static void cause(Posting posting, String id) {
        Optional<Cause> cause = posting.context().category().flatMap(c -> c.cause(id));
        Optional<StandingFact<TheoryStated>> stated = posting.sheet()
                .latest(
                        TheoryStated.class,
                        t -> id.equals(t.fact().causeId())
                                || cause.filter(c -> c.isKnownAs(t.fact().causeId()))
                                        .isPresent());
        if (stated.isPresent()) {
            chooseAgain(posting, stated.get().entry());
            return;
        }
        if (cause.isEmpty()) {
            posting.form().refuse("choice.theory", "The catalogue has no such cause: choose another one.");
            return;
        }
        posting.add(new TheoryStated(cause.get().name(), cause.get().id()));
        chooseLast(posting);
    }

    private static void chooseAgain(Posting posting, int theory) {
        boolean active =
                posting.sheet().activeTheory().filter(t -> t.entry() == theory).isPresent();
        if (!active || posting.form().has("choice.reason") || posting.form().has("choice.newEvidence")) {
            posting.add(choice(posting, theory));
        }
    }

    /** The first check of the theory is planned where going on leads to. */
    private static void firstCheck(Posting posting) {
        if (!posting.form().given("check")) {
            return;
        }
        if (!posting.form().text("then").equals("move")) {
            posting.form()
                    .refuse("check.what", "The check is recorded as you go on to Test: press that, or leave it empty.");
        }
        posting.form()
                .read("check", CheckPlanned.class, Map.of("theory", 0))
                .ifPresent(check -> posting.after().add(sheet -> check.of(activeTheory(sheet))));
    }

    private static int activeTheory(JobSheet sheet) {
        return sheet.activeTheory().orElseThrow().entry();
    }

    /** Chooses the theory that was stated just before. */
    private static void chooseLast(Posting posting) {
        posting.add(sheet -> choice(posting, sheet.entries()));
    }

    private static TheoryChosen choice(Posting posting, int theory) {
        return new TheoryChosen(
                theory, posting.form().text("choice.reason"), posting.form().text("choice.newEvidence"));
    }
}
