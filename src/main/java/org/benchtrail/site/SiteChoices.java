package org.benchtrail.site;

import io.quarkus.qute.TemplateExtension;
import java.time.DayOfWeek;
import java.time.format.TextStyle;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.benchtrail.core.method.Category;
import org.benchtrail.core.method.Priority;
import org.benchtrail.core.method.desk.WaitingFor;
import org.benchtrail.platform.Option;

/** The answers that the pages of the site ask for, as {@code site:states} in templates. */
@TemplateExtension(namespace = "site")
final class SiteChoices {
    private SiteChoices() {}

    static List<Option> categories() {
        return Option.of(Category.class);
    }

    static List<Option> states() {
        return Option.of(DeviceState.class);
    }

    static List<Option> mains() {
        return List.of(new Option("100", "100 V"), new Option("120", "120 V"), new Option("230", "230 V"));
    }

    static List<Option> waits() {
        return Option.of(WaitingFor.class);
    }

    /** The two fields of a priority: their names and what they are called. */
    public record TimesFields(String response, String answered, String fix, String fixed) {}

    static List<TimesFields> priorities() {
        return Arrays.stream(Priority.values())
                .map(p -> new TimesFields(
                        "times." + p.name() + ".response",
                        "Due " + p.words() + ": answered within",
                        "times." + p.name() + ".fix",
                        "Due " + p.words() + ": fixed within"))
                .toList();
    }

    /** The field of each day. */
    static List<Option> days() {
        return Arrays.stream(DayOfWeek.values())
                .map(d -> new Option("week." + d.name(), d.getDisplayName(TextStyle.FULL, Locale.ENGLISH)))
                .toList();
    }
}
