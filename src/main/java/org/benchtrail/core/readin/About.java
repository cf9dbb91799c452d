package org.benchtrail.core.readin;

import org.benchtrail.core.Invalid;
import org.benchtrail.core.text.PlainText;

/**
 * What a person says beside what the device says.
 *
 * @param device what it was read from, such as "server in rack 2"; goes before every point; may be empty
 * @param quantity what a series measures, such as "temperature"; empty elsewhere
 * @param unit of a series' values; empty elsewhere
 */
public record About(String device, String quantity, String unit) {
    public static final About NOTHING = new About("", "", "");

    private static final int LONGEST_DEVICE = 100;
    private static final int LONGEST_QUANTITY = 100;
    private static final int LONGEST_UNIT = 40;

    public About {
        Invalid.Collector found = new Invalid.Collector();
        device = line(found, "device", device, LONGEST_DEVICE);
        quantity = line(found, "quantity", quantity, LONGEST_QUANTITY);
        unit = line(found, "unit", unit, LONGEST_UNIT);
        found.throwIfAny();
    }

    private static String line(Invalid.Collector found, String field, String text, int most) {
        String line = PlainText.line(text);
        found.require(line.length() <= most, field, "Shorten this to " + most + " characters.");
        found.require(PlainText.isText(line), field, PlainText.WHAT_TO_DO);
        return line;
    }
}
