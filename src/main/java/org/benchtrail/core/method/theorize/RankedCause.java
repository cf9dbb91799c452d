package org.benchtrail.core.method.theorize;

import org.benchtrail.core.diagnosis.Model;
import org.benchtrail.core.diagnosis.Words;
import org.benchtrail.core.diagnosis.path.Localiser;

/**
 * A cause of the catalogue as it was ranked.
 *
 * @param causeId id in the catalogue
 * @param probability in [0, 1], decimal with four digits
 */
public record RankedCause(String causeId, String name, String probability) {

    /** Such as "heatsink or filter clogged by dust, about 3 in 10". */
    String words() {
        return name + ", " + Words.chance(Double.parseDouble(probability));
    }

    /** Whether it stands for whatever the catalogue does not list, in one of its places or outside them all. */
    boolean unlisted() {
        return causeId.equals(Model.UNLISTED) || causeId.startsWith(Localiser.SOMETHING_ELSE);
    }
}
