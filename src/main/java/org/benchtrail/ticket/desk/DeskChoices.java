package org.benchtrail.ticket.desk;

import io.quarkus.qute.TemplateExtension;
import java.util.List;
import org.benchtrail.core.method.Caution;
import org.benchtrail.core.method.desk.Addendum;
import org.benchtrail.core.method.desk.WaitingFor;
import org.benchtrail.core.method.desk.WorkMark;
import org.benchtrail.platform.Option;

/** The answers that the forms of the desk offer, as {@code desk:cautions} in templates. */
@TemplateExtension(namespace = "desk")
final class DeskChoices {
    private DeskChoices() {}

    static List<Option> waitingFor() {
        return Option.of(WaitingFor.class);
    }

    static List<Option> addenda() {
        return Option.of(Addendum.About.class);
    }

    static List<Option> cautions() {
        return Option.of(Caution.class);
    }

    static List<Option> marks() {
        return Option.of(WorkMark.class);
    }

    static List<Caution> live() {
        return List.of(Caution.LIVE);
    }

    static String lastWord() {
        return Caution.lastWord();
    }
}
