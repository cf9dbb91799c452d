package org.benchtrail.core.site;

import java.time.LocalDate;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.text.PlainText;

/**
 * A day, or a part of it, on which nobody works.
 *
 * @param off the part of the day; {@link Shift#WHOLE_DAY} if all of it
 * @param name such as "Founder's day", at most 100 characters
 */
public record Holiday(LocalDate day, Shift off, String name) {
    private static final int LONGEST = 100;

    /** @throws Invalid on {@code holidays} if the name is missing or too long */
    public Holiday {
        name = PlainText.line(name);
        if (name.isEmpty() || name.length() > LONGEST || !PlainText.isText(name)) {
            throw new Invalid("holidays", "Name the holiday on " + day + " in at most 100 characters.");
        }
    }

    public boolean isWhole() {
        return off.equals(Shift.WHOLE_DAY);
    }
}
