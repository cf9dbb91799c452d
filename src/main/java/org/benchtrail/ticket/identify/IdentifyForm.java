package org.benchtrail.ticket.identify;

import static org.benchtrail.ticket.form.FieldGroup.answer;
import static org.benchtrail.ticket.form.FieldGroup.given;
import static org.benchtrail.ticket.form.FieldGroup.special;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.identify.ChangesAsked;
import org.benchtrail.core.method.identify.DataAnswered;
import org.benchtrail.core.method.identify.EvidenceImpossible;
import org.benchtrail.core.method.identify.Hazard;
import org.benchtrail.core.method.identify.HazardsScreened;
import org.benchtrail.core.method.identify.LikenessChecked;
import org.benchtrail.core.method.identify.LogsReviewed;
import org.benchtrail.core.method.identify.LossAccepted;
import org.benchtrail.core.method.identify.OnsetRecorded;
import org.benchtrail.core.method.identify.ReproductionTried;
import org.benchtrail.core.method.identify.Scope;
import org.benchtrail.core.method.identify.ScopeRecorded;
import org.benchtrail.core.method.identify.SymptomRecorded;
import org.benchtrail.ticket.form.FieldGroup;
import org.benchtrail.ticket.form.Posting;
import org.benchtrail.ticket.form.SheetForm;

/** The questions of the first step. */
public final class IdentifyForm {
    /** How the data stand once identify is left: looked at again, and so recorded even if it is as before. */
    public static final FieldGroup<DataAnswered> DATA_NOW = given("datanow", DataAnswered.class);

    /** Where no backup is possible, who owns the data accepts their loss. */
    public static final FieldGroup<LossAccepted> LOSS = given("loss", LossAccepted.class);

    public static final SheetForm FORM = SheetForm.of(
                    "identify",
                    given("symptom", SymptomRecorded.class)
                            .when(IdentifyForm::isSymptomTyped)
                            .showing(sheet -> Optional.of(Map.of("words", firstWords(sheet)))),
                    answer("onset", OnsetRecorded.class, IdentifyForm::knownIfSaid),
                    answer("changes", ChangesAsked.class),
                    answer("scope", ScopeRecorded.class).showing(IdentifyForm::scopeOfReport),
                    answer("reproduction", ReproductionTried.class),
                    answer("data", DataAnswered.class),
                    DATA_NOW,
                    LOSS,
                    answer("logs", LogsReviewed.class, IdentifyForm::nothingOfNote))
            .with(EvidenceForm.GROUPS)
            .with(
                    answer("noevidence", EvidenceImpossible.class),
                    special("likeness", LikenessChecked.class, IdentifyForm::likeness),
                    // last: a hazard stops whatever would be recorded after it
                    answer("hazards", HazardsScreened.class).when(IdentifyForm::isScreened))
            .fields(EvidenceForm.LIMIT, "likeness.looked", "shown");

    private IdentifyForm() {}

    /** Every hazard is answered by itself; a screening that was recorded with a shorter list may stand as it is. */
    private static boolean isScreened(Posting posting) {
        boolean shorter = posting.sheet()
                .latest(HazardsScreened.class)
                .filter(s -> s.fact().answersShorterList())
                .isPresent();
        List<Hazard> open = Stream.of(Hazard.values())
                .filter(hazard -> !posting.form().has("hazards.present." + hazard))
                .toList();
        if (posting.form().given("hazards") && !shorter) {
            open.forEach(
                    hazard -> posting.form().refuse("hazards.present." + hazard, HazardsScreened.question(hazard)));
        }
        return open.isEmpty() || shorter;
    }

    /** The words of the report stand in the field by themselves: they alone are no symptom yet. */
    private static boolean isSymptomTyped(Posting posting) {
        return posting.form().has("symptom.observable")
                || !posting.form().text("symptom.words").equals(firstWords(posting.sheet()));
    }

    /** What the first symptom begins with: the words of the report; empty once there is a symptom. */
    private static String firstWords(JobSheet sheet) {
        if (!sheet.all(SymptomRecorded.class).isEmpty()) {
            return "";
        }
        String words = sheet.opened().words();
        return words.isEmpty() ? sheet.opened().title() : words;
    }

    /** Who says when it began need not say that this is known. */
    private static Map<String, ?> knownIfSaid(Posting posting) {
        boolean said = posting.form().has("onset.when") && !posting.form().has("onset.known");
        return said ? Map.of("known", true) : Map.of();
    }

    /** Logs that show nothing are answered by one choice. */
    private static Map<String, ?> nothingOfNote(Posting posting) {
        if (!posting.form().text("logs.looked").equals(IdentifyChoices.NOTHING_OF_NOTE)) {
            return Map.of();
        }
        String note = posting.form().text("logs.note");
        return Map.of("looked", true, "note", note.isEmpty() ? "Nothing of note" : note);
    }

    /** Who is affected was said in the report and stands as it was said: saving says so too, or what waits for it would wait for ever. */
    private static Optional<?> scopeOfReport(JobSheet sheet) {
        Scope scope = switch (sheet.opened().impact()) {
            case ONE_PERSON -> Scope.ONE;
            case SEVERAL -> Scope.SEVERAL;
            case WHOLE_SITE -> Scope.SITE;
        };
        return Optional.of(Map.of("scope", scope.name()));
    }

    private static void likeness(Posting posting) {
        if (posting.form().has("likeness.looked")
                && posting.sheet().latest(LikenessChecked.class).isEmpty()) {
            List<String> shown = Arrays.stream(posting.form().text("shown").split(" "))
                    .filter(s -> !s.isEmpty())
                    .toList();
            posting.add(new LikenessChecked(shown));
        }
    }
}
