package org.benchtrail.site;

import io.quarkus.hibernate.orm.panache.PanacheRepository;
import jakarta.enterprise.context.ApplicationScoped;
import java.time.Clock;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.benchtrail.core.method.Actor;
import org.jspecify.annotations.Nullable;

/** What was changed at places, teams and devices: appended and read; the database refuses anything else. */
@ApplicationScoped
class SiteChanges implements PanacheRepository<SiteChange> {
    private static final int SHOWN = 100;

    private final Clock clock;

    SiteChanges(Clock clock) {
        this.clock = clock;
    }

    /** A value that was changed. */
    public record Line(Instant at, String who, String field, String before, String after) {}

    /** Notes every field that is something else now; nothing was before a thing was added. */
    void note(
            SiteChange.Kind kind,
            @Nullable Long subject,
            Map<String, String> before,
            Map<String, String> after,
            Actor by) {
        Instant now = clock.instant().truncatedTo(ChronoUnit.MICROS);
        after.forEach((field, value) -> {
            String old = before.getOrDefault(field, "");
            if (!old.equals(value)) {
                SiteChange row = new SiteChange();
                row.at = now;
                row.who = by.account();
                row.kind = kind;
                row.subject = Objects.requireNonNull(subject);
                row.field = field;
                row.before = old;
                row.after = value;
                persist(row);
            }
        });
    }

    /** The latest first; at most 100. */
    List<Line> of(SiteChange.Kind kind, @Nullable Long subject) {
        return find("kind = ?1 and subject = ?2 order by id desc", kind, subject)
                .range(0, SHOWN - 1)
                .<SiteChange>list()
                .stream()
                .map(c -> new Line(c.at, c.who, c.field, c.before, c.after))
                .toList();
    }
}
