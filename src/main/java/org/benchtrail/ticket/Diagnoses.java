package org.benchtrail.ticket;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.Optional;
import org.benchtrail.catalogue.CatalogueVersion;
import org.benchtrail.catalogue.Catalogues;
import org.benchtrail.core.advice.Diagnosis;
import org.benchtrail.core.diagnosis.Model;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.StandingFact;
import org.benchtrail.core.method.theorize.TheoriesRanked;

/** The causes of a ticket, ranked with a version of the catalogue. */
@ApplicationScoped
public class Diagnoses {
    private final Catalogues catalogues;

    Diagnoses(Catalogues catalogues) {
        this.catalogues = catalogues;
    }

    /**
     * A diagnosis, and where its figures come from.
     *
     * @param version of the catalogue
     * @param label such as "starter figures, not yet learned here"
     */
    public record Dated(Diagnosis diagnosis, int version, String label) {}

    /** With the version in force; empty if the catalogue has nothing for the ticket's category. */
    public Optional<Dated> of(JobSheet sheet) {
        return of(sheet, catalogues.inForce());
    }

    /** With an older version, to see again what was seen then. */
    public Optional<Dated> of(JobSheet sheet, int version) {
        return of(sheet, catalogues.version(version));
    }

    private static Optional<Dated> of(JobSheet sheet, CatalogueVersion version) {
        String category = sheet.opened().category().catalogue();
        return version.model(category)
                .map(model -> new Dated(Diagnosis.of(sheet, model), version.number(), version.label(category)));
    }

    /** The model that the ticket's findings belong to; empty if the catalogue has nothing for its category. */
    public Optional<Model> model(JobSheet sheet) {
        return catalogues.inForce().model(sheet.opened().category().catalogue());
    }

    /** The ranking as it is recorded before a theory is chosen; empty if nothing bears on it, or nothing has changed. */
    Optional<TheoriesRanked> toRecord(JobSheet sheet) {
        return of(sheet)
                .filter(dated -> dated.diagnosis().hasEvidence())
                .map(dated -> dated.diagnosis().recorded(dated.version(), dated.label()))
                .filter(ranked -> !sheet.latest(TheoriesRanked.class)
                        .map(StandingFact::fact)
                        .equals(Optional.of(ranked)));
    }
}
