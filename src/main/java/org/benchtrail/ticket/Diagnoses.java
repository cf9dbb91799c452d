package org.benchtrail.ticket;

import jakarta.enterprise.context.ApplicationScoped;
import java.math.BigDecimal;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.benchtrail.catalogue.CatalogueVersion;
import org.benchtrail.catalogue.Catalogues;
import org.benchtrail.core.advice.Diagnosis;
import org.benchtrail.core.advice.SheetEvidence;
import org.benchtrail.core.diagnosis.CauseCategory;
import org.benchtrail.core.diagnosis.Finding;
import org.benchtrail.core.diagnosis.Nominal;
import org.benchtrail.core.diagnosis.path.Localiser;
import org.benchtrail.core.measure.Limit;
import org.benchtrail.core.measure.Units;
import org.benchtrail.core.method.Category;
import org.benchtrail.core.method.Caution;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.StandingFact;
import org.benchtrail.core.method.theorize.TheoriesRanked;
import org.jspecify.annotations.Nullable;

/** The causes of a ticket, ranked with a version of the catalogue. */
@ApplicationScoped
public class Diagnoses {
    private final Catalogues catalogues;
    private final SiteReader reader;

    Diagnoses(Catalogues catalogues, SiteReader reader) {
        this.catalogues = catalogues;
        this.reader = reader;
    }

    /**
     * A diagnosis, and where its figures come from.
     *
     * @param category everything that can be answered on the ticket, and every cause
     * @param version of the catalogue
     * @param label such as "starter figures, not yet learned here"
     * @param otherKind that the words of the sheet fit much better; null if there is none
     */
    public record Dated(
            Diagnosis diagnosis,
            CauseCategory category,
            int version,
            String label,
            @Nullable Category otherKind) {}

    /** With the version in force; empty if the catalogue has nothing for the ticket's category. */
    public Optional<Dated> of(JobSheet sheet) {
        return of(sheet, catalogues.inForce());
    }

    /** With an older version, to see again what was seen then. */
    public Optional<Dated> of(JobSheet sheet, int version) {
        return of(sheet, catalogues.version(version));
    }

    private Optional<Dated> of(JobSheet sheet, CatalogueVersion version) {
        String category = sheet.opened().category().catalogue();
        return version.localiser(category)
                .map(places -> new Dated(
                        Diagnosis.of(sheet, places, reader),
                        places.askable(),
                        version.number(),
                        version.label(category),
                        otherKind(sheet, version).orElse(null)));
    }

    private static Optional<Category> otherKind(JobSheet sheet, CatalogueVersion version) {
        return version.words()
                .betterKind(sheet)
                .flatMap(id -> Stream.of(Category.values())
                        .filter(c -> c.catalogue().equals(id))
                        .findFirst());
    }

    /** Everything that can be answered on the ticket, and every cause; empty if the catalogue has nothing for its category. */
    public Optional<CauseCategory> category(JobSheet sheet) {
        return catalogues
                .inForce()
                .localiser(sheet.opened().category().catalogue())
                .map(Localiser::askable);
    }

    /** The cautions against the dangers that the catalogue names for making that finding; empty if it names none. */
    public Set<Caution> cautionsOf(JobSheet sheet, String finding) {
        return category(sheet)
                .flatMap(c -> SheetEvidence.finding(c, finding))
                .map(Caution::against)
                .orElse(Set.of());
    }

    /** The limit that the catalogue sets a reading of that finding at this site's mains; empty if it depends on nothing, or on more. */
    public Optional<Limit> limitOf(JobSheet sheet, String finding) {
        return category(sheet)
                .flatMap(c -> SheetEvidence.finding(c, finding))
                .map(Finding::limits)
                .flatMap(limits -> reader.mains(sheet)
                        .map(volts ->
                                limits.nominal() == null || limits.nominal().by() != Nominal.By.MAINS
                                        ? null
                                        : limits.nominal().cases().get(volts))
                        .map(at -> Limit.of(
                                decimal(at.low()),
                                decimal(at.high()),
                                Units.read("unit", limits.unit()),
                                at.source())));
    }

    private static @Nullable BigDecimal decimal(@Nullable Double bound) {
        return bound == null ? null : BigDecimal.valueOf(bound).stripTrailingZeros();
    }

    /** The cautions against the dangers that the catalogue names for the usual repair of the active theory. */
    public Set<Caution> cautionsOfRepair(JobSheet sheet) {
        return category(sheet)
                .flatMap(category -> SheetEvidence.causeUnderTest(category, sheet))
                .map(c -> Caution.against(c.repair().dangers()))
                .orElse(Set.of());
    }

    /** The ranking as it is recorded before a theory is chosen; empty if nothing bears on it, or nothing has changed. */
    public Optional<TheoriesRanked> toRecord(JobSheet sheet) {
        return of(sheet)
                .filter(dated -> dated.diagnosis().hasEvidence())
                .map(dated -> dated.diagnosis().recorded(sheet, dated.version(), dated.label()))
                .filter(ranked -> !sheet.latest(TheoriesRanked.class)
                        .map(StandingFact::fact)
                        .equals(Optional.of(ranked)));
    }
}
