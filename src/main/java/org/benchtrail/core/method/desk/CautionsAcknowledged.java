package org.benchtrail.core.method.desk;

import java.util.Set;
import org.benchtrail.core.method.Caution;
import org.benchtrail.core.method.EnumCopies;

/** Cautions read and taken before the check or action with that entry number. */
public record CautionsAcknowledged(int about, Set<Caution> cautions) implements DeskFact {
    public CautionsAcknowledged {
        cautions = EnumCopies.set(Caution.class, cautions);
    }
}
