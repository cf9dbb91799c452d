package org.benchtrail.core.method.desk;

import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.benchtrail.core.method.Caution;
import org.benchtrail.core.method.EnumCopies;
import org.benchtrail.core.method.Fact;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.Reference;
import org.benchtrail.core.method.StandingFact;

/** Cautions read and taken before the check or action with that entry number. */
public record CautionsAcknowledged(int about, Set<Caution> cautions) implements DeskFact {
    public CautionsAcknowledged {
        cautions = EnumCopies.set(Caution.class, cautions);
    }

    /** Cautions acknowledged for that check or action, as it stands, before that entry. */
    public static Set<Caution> taken(JobSheet sheet, StandingFact<?> about, int before) {
        Set<Caution> taken = EnumSet.noneOf(Caution.class);
        sheet.all(
                        CautionsAcknowledged.class,
                        a -> a.fact().about() == about.entry()
                                && a.entry() > about.settledSince()
                                && a.entry() < before)
                .forEach(a -> taken.addAll(a.fact().cautions()));
        return taken;
    }

    @Override
    public List<Reference> references() {
        return List.of(new Reference(about, Fact.class, "about"));
    }
}
