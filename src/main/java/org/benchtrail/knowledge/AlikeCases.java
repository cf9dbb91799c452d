package org.benchtrail.knowledge;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.benchtrail.core.diagnosis.Likeness;
import org.benchtrail.core.diagnosis.path.Localiser;
import org.benchtrail.core.diagnosis.path.Pinned;
import org.benchtrail.core.method.Category;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.platform.sql.Sql;
import org.benchtrail.platform.sql.SqlText;
import org.jspecify.annotations.Nullable;

/** Cases that are like a ticket: by what was found on it, by where on its path and in which place it is, or because it was the same device. */
@ApplicationScoped
class AlikeCases {
    /** So many of the newest cases of the kind are compared; they also tell how rare a finding is. */
    private static final int COMPARED = 2_000;

    /** Below this likeness a case tells nothing; common practice, no source. */
    private static final double LEAST = 0.2;

    private final EntityManager database;
    private final SqlText sql = SqlText.of(AlikeCases.class);

    AlikeCases(EntityManager database) {
        this.database = database;
    }

    /**
     * A case that is like it.
     *
     * @param shared findings that both have
     * @param segments parts of the path that both were put in
     * @param here whether it was in the same place
     */
    record AlikeCase(
            int serial,
            @Nullable Long known,
            double likeness,
            List<String> shared,
            Set<String> segments,
            boolean here) {}

    /** A case of the same device, and the known cause that it belongs to. */
    record EarlierCase(int serial, long known) {}

    /** What was found on the device of a ticket before, the latest first: by its name and its place, for many are called alike. */
    List<EarlierCase> ofDevice(String device, String place, String number, int most) {
        return Sql.of(database, sql.statement("of the device"))
                .with("device", device)
                .with("place", place)
                .with("but", TicketNumber.parse(number).serial())
                .with("most", most)
                .rows(EarlierCase.class);
    }

    private record ComparedCase(
            int serial, @Nullable Long known, @Nullable String causeId, List<String> findings, String place) {}

    /**
     * The likest first; nothing if it is not known of the ticket what was found, nor in which part of its path it is.
     *
     * @param places of the kind, by which the part of a case is known
     */
    List<AlikeCase> like(Likeness.Traits ticket, @Nullable Category category, Optional<Localiser> places) {
        if (ticket.findings().isEmpty() && ticket.segments().isEmpty()) {
            return List.of();
        }
        List<ComparedCase> cases = newest(category);
        Likeness likeness =
                Likeness.among(cases.stream().map(ComparedCase::findings).toList());
        return cases.stream()
                .map(c -> compared(ticket, c, traits(c, places), likeness))
                .filter(like -> like.likeness() >= LEAST)
                .sorted(Comparator.comparingDouble(AlikeCase::likeness).reversed())
                .toList();
    }

    private static AlikeCase compared(
            Likeness.Traits ticket, ComparedCase closed, Likeness.Traits traits, Likeness likeness) {
        return new AlikeCase(
                closed.serial(),
                closed.known(),
                likeness.of(ticket, traits),
                shared(ticket.findings(), closed.findings()),
                ticket.shared(traits),
                ticket.isSamePlace(traits));
    }

    /** Its part of the path is that of the catalogue as it is today, so that cases from before the paths have one too. */
    private static Likeness.Traits traits(ComparedCase closed, Optional<Localiser> places) {
        Set<String> segments = places.map(p -> Pinned.segments(p, closed.causeId(), closed.findings()))
                .orElse(Set.of());
        return new Likeness.Traits(Set.copyOf(closed.findings()), segments, closed.place());
    }

    private static List<String> shared(Collection<String> some, Collection<String> others) {
        return some.stream().filter(others::contains).sorted().toList();
    }

    private List<ComparedCase> newest(@Nullable Category category) {
        List<String> conditions = category == null ? List.of() : List.of("of the kind");
        Sql newest = Sql.of(database, sql.statement("newest", conditions)).with("most", COMPARED);
        return (category == null ? newest : newest.with("category", category.name())).rows(ComparedCase.class);
    }
}
