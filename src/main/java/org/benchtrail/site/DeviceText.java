package org.benchtrail.site;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.regex.Pattern;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.method.Category;
import org.benchtrail.core.site.Nameplate;
import org.benchtrail.core.text.PlainText;
import org.jspecify.annotations.Nullable;

/**
 * A device as typed.
 *
 * @param label what is written on it, and what tickets name it by: letters, digits, spaces and {@code . _ -}; never changed
 * @param category of the trouble that it usually has
 * @param place the name of a place of the site; empty if it has none
 * @param connection how it is connected, such as "2.5 Gbit/s Ethernet, USB-C"
 * @param nameplate its limits, a line for each, see {@link Nameplate#parse}
 * @param warranty the last day of it, such as {@code 2028-06-30}; empty if it is not known
 * @param state null for in use
 */
public record DeviceText(
        String label,
        @Nullable Category category,
        String model,
        String serial,
        String place,
        String connection,
        String nameplate,
        String warranty,
        @Nullable DeviceState state,
        String note) {
    private static final Pattern LABEL = Pattern.compile("[\\p{L}\\p{N}](?:[\\p{L}\\p{N} ._-]*[\\p{L}\\p{N}])?");
    private static final int LONGEST_LABEL = 60;
    private static final int LONGEST = 200;
    private static final int LONGEST_NAMEPLATE = 4000;

    public DeviceText {
        label = PlainText.line(label);
        model = PlainText.line(model);
        serial = PlainText.line(serial);
        place = PlainText.line(place);
        connection = PlainText.line(connection);
        nameplate = PlainText.paragraph(nameplate);
        warranty = PlainText.line(warranty);
        note = PlainText.paragraph(note);
    }

    String source() {
        return "nameplate of " + label;
    }

    /** @throws Invalid naming everything that cannot be taken, but for the place */
    void check() {
        Invalid.Collector problems = new Invalid.Collector()
                .require(
                        label.length() <= LONGEST_LABEL && LABEL.matcher(label).matches(),
                        "label",
                        "Give the label on the device: letters, digits, spaces, points and hyphens, at most 60.")
                .require(category != null, "category", "Choose what kind of trouble it usually has.")
                .require(isDate(), "warranty", "Give the last day of the warranty as 2028-06-30, or leave it empty.");
        text(problems, "model", model, LONGEST);
        text(problems, "serial", serial, LONGEST);
        text(problems, "connection", connection, LONGEST);
        text(problems, "note", note, LONGEST_NAMEPLATE);
        text(problems, "nameplate", nameplate, LONGEST_NAMEPLATE);
        try {
            Nameplate.parse(nameplate, source());
        } catch (Invalid e) {
            e.problems().forEach(p -> problems.require(false, p.field(), p.sentence()));
        }
        problems.throwIfAny();
    }

    private static void text(Invalid.Collector problems, String field, String typed, int longest) {
        problems.require(typed.length() <= longest, field, "Shorten this to " + longest + " characters.")
                .require(PlainText.isText(typed), field, PlainText.WHAT_TO_DO);
    }

    private boolean isDate() {
        try {
            return warranty.isEmpty() || LocalDate.parse(warranty).getYear() < 10_000;
        } catch (DateTimeException e) {
            return false;
        }
    }
}
