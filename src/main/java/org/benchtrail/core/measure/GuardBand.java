package org.benchtrail.core.measure;

import org.benchtrail.core.Invalid;

/**
 * How far inside (outside) its limit a reading has to lie before it is called within (outside): a multiple of the standard
 * uncertainty, by the shop's policy.
 *
 * <p>Source: ILAC-G8:09/2019, 4.2: w = 0 is simple acceptance with a risk of false acceptance up to 50 %; w = U = 2u keeps it
 * below 2.5 %.
 *
 * @param multiple of the standard uncertainty, 0 to 10
 */
public record GuardBand(double multiple) {
    public static final GuardBand NONE = new GuardBand(0);

    /** The expanded uncertainty U, k = 2. */
    public static final GuardBand EXPANDED = new GuardBand(2);

    public GuardBand {
        if (!(multiple >= 0 && multiple <= 10)) {
            throw new Invalid("multiple", "Give the guard band as 0 to 10 standard uncertainties; 2 is usual.");
        }
    }
}
