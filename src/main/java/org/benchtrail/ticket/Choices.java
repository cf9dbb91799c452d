package org.benchtrail.ticket;

import java.util.List;
import java.util.stream.Stream;
import org.benchtrail.core.diagnosis.Source;
import org.benchtrail.core.method.Category;
import org.benchtrail.core.method.Caution;
import org.benchtrail.core.method.DeskFact;
import org.benchtrail.core.method.DocumentFact;
import org.benchtrail.core.method.IdentifyFact;
import org.benchtrail.core.method.PlanFact;
import org.benchtrail.core.method.Priority;
import org.benchtrail.core.method.TestFact;
import org.benchtrail.core.method.TheorizeFact;
import org.benchtrail.core.method.VerifyFact;
import org.benchtrail.platform.Option;

/** The answers that forms offer. */
public record Choices(
        List<Option> category,
        List<Option> impact,
        List<Option> urgency,
        List<Option> onset,
        List<Option> change,
        List<Option> answer,
        List<Option> scope,
        List<Option> reproduction,
        List<Option> hazard,
        List<Option> yesNo,
        List<Option> data,
        List<Option> looked,
        List<Option> obvious,
        List<Option> look,
        List<Option> caution,
        List<Option> outcome,
        List<Option> maker,
        List<Option> fit,
        List<Option> settlement,
        List<Option> gone,
        List<Option> function,
        List<Option> requester,
        List<Option> prevention,
        List<Option> sureness,
        List<Option> learned,
        List<Option> waitingFor,
        List<Option> source) {

    static final Choices ALL = new Choices(
            Option.of(Category.class),
            Option.of(Priority.Impact.class),
            Option.of(Priority.Urgency.class),
            Option.yesNo("it is known", "nobody knows"),
            Option.of(IdentifyFact.Change.class),
            Option.of(IdentifyFact.Answer.class),
            Option.of(IdentifyFact.Scope.class),
            Option.of(IdentifyFact.Reproduction.class),
            Option.of(IdentifyFact.Hazard.class),
            Option.yesNo("yes", "no"),
            Option.of(IdentifyFact.DataState.class),
            Option.yesNo("looked at", "not looked at"),
            Option.of(TheorizeFact.Obvious.class),
            Option.of(TheorizeFact.Look.class),
            cautions(),
            Option.of(TestFact.Outcome.class),
            Option.yesNo("read", "none apply"),
            Option.of(PlanFact.Fit.class),
            Option.of(PlanFact.Settlement.class),
            Option.yesNo("gone", "still there"),
            Option.of(VerifyFact.ItemState.class),
            Option.of(VerifyFact.RequesterState.class),
            Option.yesNo("a measure", "none applies"),
            Option.of(DocumentFact.Sureness.class),
            Option.of(DocumentFact.Learned.class),
            Option.of(DeskFact.WaitingFor.class),
            Stream.of(Source.values()).map(s -> new Option(s.name(), words(s))).toList());

    /** How a finding is known, in words. */
    static String words(Source source) {
        return switch (source) {
            case CALIBRATED -> "measured, calibration in date";
            case SEEN -> "seen or tried here";
            case OUT_OF_DATE -> "measured, calibration out of date";
            case REPORTED -> "told by the requester";
            case INTERMITTENT -> "comes and goes, or hearsay";
        };
    }

    private static List<Option> cautions() {
        return Option.of(Caution.class);
    }
}
