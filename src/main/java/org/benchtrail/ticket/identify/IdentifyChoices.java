package org.benchtrail.ticket.identify;

import io.quarkus.qute.TemplateExtension;
import java.util.List;
import java.util.stream.Stream;
import org.benchtrail.core.diagnosis.Source;
import org.benchtrail.core.method.identify.ChangeAnswer;
import org.benchtrail.core.method.identify.ChangeKind;
import org.benchtrail.core.method.identify.DataState;
import org.benchtrail.core.method.identify.Hazard;
import org.benchtrail.core.method.identify.Reproduction;
import org.benchtrail.core.method.identify.Scope;
import org.benchtrail.platform.Option;

/** The answers that the forms of identify offer, as {@code identify:hazards} in templates. */
@TemplateExtension(namespace = "identify")
public final class IdentifyChoices {
    /** Logs that were read and show nothing: for {@code looked}, beside yes and no. */
    static final String NOTHING_OF_NOTE = "nothing";

    private IdentifyChoices() {}

    static List<Option> changes() {
        return Option.of(ChangeKind.class);
    }

    static List<Option> changed() {
        return Option.of(ChangeAnswer.class);
    }

    static List<Option> scopes() {
        return Option.of(Scope.class);
    }

    static List<Option> reproductions() {
        return Option.of(Reproduction.class);
    }

    static List<Option> hazards() {
        return Option.of(Hazard.class);
    }

    static List<Option> present() {
        return Option.yesNo("yes", "no");
    }

    static List<Option> data() {
        return Option.of(DataState.class);
    }

    static List<Option> logs() {
        return List.of(
                new Option(NOTHING_OF_NOTE, "nothing"),
                new Option("true", "something"),
                new Option("false", "not read"));
    }

    static List<Option> sources() {
        return Stream.of(Source.values())
                .filter(source -> source != Source.PRESUMED)
                .map(source -> new Option(source.name(), words(source)))
                .toList();
    }

    /** How a finding is known, in words. */
    static String words(Source source) {
        return switch (source) {
            case CALIBRATED -> "measured, calibration in date";
            case SEEN -> "seen or tried here";
            case OUT_OF_DATE -> "measured, calibration out of date";
            case REPORTED -> "told by the requester";
            case INTERMITTENT -> "comes and goes, or hearsay";
            case PRESUMED -> "follows from something else";
        };
    }
}
