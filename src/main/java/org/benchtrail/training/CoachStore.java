package org.benchtrail.training;

import io.quarkus.runtime.Startup;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import java.time.Clock;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.benchtrail.core.method.Entry;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.core.training.CoachChoices;
import org.benchtrail.core.training.CoachLevel;
import org.benchtrail.core.training.WorkJudged;
import org.benchtrail.platform.sql.Sql;
import org.benchtrail.platform.sql.SqlText;
import org.benchtrail.trail.TrailEntry;
import org.jspecify.annotations.Nullable;

/** What people chose to be shown, each person's apart, and what their tickets' trails tell of the steps that they left. */
@Startup
@ApplicationScoped
class CoachStore {
    private final EntityManager database;
    private final Clock clock;
    private final SqlText text = SqlText.of(CoachStore.class).having("choose", "choices", "work", "heads", "bound");
    private final OwnRows rows;

    CoachStore(EntityManager database, Clock clock) {
        this.database = database;
        this.clock = clock;
        rows = new OwnRows(database, text, "coach.person");
    }

    /**
     * @param code of a requirement; empty for all
     * @param level null: left to the coach again
     */
    void choose(String person, String code, @Nullable CoachLevel level) {
        rows.of(
                person,
                "choose",
                sql -> sql.with("code", code)
                        .with("level", level == null ? null : level.name())
                        .with("at", clock.instant())
                        .run());
    }

    /** The share that has to be met before a level goes: a stricter one where the last test of the coach did not show it to be needless. */
    double bound() {
        return Sql.of(database, text.statement("bound")).values(Boolean.class).stream()
                        .allMatch(Boolean.TRUE::equals)
                ? CoachLevel.MET
                : CoachLevel.STRICTER;
    }

    private record ChoiceRow(String code, @Nullable String level, Instant at) {}

    CoachChoices choices(String person) {
        return new CoachChoices(rows.of(person, "choices", sql -> sql.rows(ChoiceRow.class)).stream()
                .map(r -> new CoachChoices.Choice(r.code, r.level == null ? null : CoachLevel.valueOf(r.level), r.at))
                .toList());
    }

    private record WorkRow(
            int ticket,
            int entry,
            Instant at,
            String actor,
            String kind,
            byte[] canonical,
            String hash,
            byte @Nullable [] words) {}

    /** Of each ticket on which that person left a step or tried to, the entries that matter; what cannot be read is left out. */
    Map<TicketNumber, List<Entry>> work(String person) {
        Map<TicketNumber, List<Entry>> work = new LinkedHashMap<>();
        Sql.of(database, text.statement("work"))
                .with("person", person)
                .with("kinds", WorkJudged.kinds())
                .rows(WorkRow.class)
                .forEach(r -> new TrailEntry(r.entry, r.at, r.actor, r.kind, r.canonical, r.hash, r.words)
                        .readable()
                        .ifPresent(entry -> work.computeIfAbsent(new TicketNumber(r.ticket), t -> new ArrayList<>())
                                .add(entry)));
        return work;
    }

    /** The last entry of a trail. */
    record Head(int ticket, int entry, String hash) {
        TicketNumber number() {
            return new TicketNumber(ticket);
        }
    }

    List<Head> heads(Collection<TicketNumber> tickets) {
        return tickets.isEmpty()
                ? List.of()
                : Sql.of(database, text.statement("heads"))
                        .with(
                                "tickets",
                                tickets.stream().map(TicketNumber::serial).toList())
                        .rows(Head.class);
    }
}
