package org.benchtrail.ticket;

import java.util.List;
import java.util.stream.Stream;
import org.benchtrail.core.diagnosis.Source;
import org.benchtrail.core.method.Category;
import org.benchtrail.core.method.Caution;
import org.benchtrail.core.method.Priority;
import org.benchtrail.core.method.desk.WaitingFor;
import org.benchtrail.core.method.document.Lesson;
import org.benchtrail.core.method.document.Sureness;
import org.benchtrail.core.method.identify.ChangeAnswer;
import org.benchtrail.core.method.identify.ChangeKind;
import org.benchtrail.core.method.identify.DataState;
import org.benchtrail.core.method.identify.Hazard;
import org.benchtrail.core.method.identify.Reproduction;
import org.benchtrail.core.method.identify.Scope;
import org.benchtrail.core.method.plan.Fit;
import org.benchtrail.core.method.plan.Settlement;
import org.benchtrail.core.method.test.CheckOutcome;
import org.benchtrail.core.method.theorize.Inspection;
import org.benchtrail.core.method.theorize.Obvious;
import org.benchtrail.core.method.verify.ItemState;
import org.benchtrail.core.method.verify.RequesterState;
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
            Option.of(ChangeKind.class),
            Option.of(ChangeAnswer.class),
            Option.of(Scope.class),
            Option.of(Reproduction.class),
            Option.of(Hazard.class),
            Option.yesNo("yes", "no"),
            Option.of(DataState.class),
            Option.yesNo("looked at", "not looked at"),
            Option.of(Obvious.class),
            Option.of(Inspection.class),
            cautions(),
            Option.of(CheckOutcome.class),
            Option.yesNo("read", "none apply"),
            Option.of(Fit.class),
            Option.of(Settlement.class),
            Option.yesNo("gone", "still there"),
            Option.of(ItemState.class),
            Option.of(RequesterState.class),
            Option.yesNo("a measure", "none applies"),
            Option.of(Sureness.class),
            Option.of(Lesson.class),
            Option.of(WaitingFor.class),
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
