package org.benchtrail.ticket.today;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.quarkus.runtime.Startup;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.util.List;
import java.util.Set;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.Role;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.core.method.desk.Wait;
import org.benchtrail.core.method.desk.Waits;
import org.benchtrail.platform.sql.Sql;
import org.benchtrail.platform.sql.SqlText;
import org.benchtrail.site.SiteBook;
import org.benchtrail.ticket.TicketChanged;

/** What waits, and for whom, as it follows from the job sheets; kept in the transaction of every act. */
@Startup
@ApplicationScoped
@Transactional
public class WaitBook {
    private final EntityManager database;
    private final SiteBook site;
    private final ObjectMapper json;
    private final Clock clock;
    private final SqlText text;

    WaitBook(EntityManager database, SiteBook site, ObjectMapper json, Clock clock) {
        this.database = database;
        this.site = site;
        this.json = json;
        this.clock = clock;
        text = SqlText.of(WaitBook.class).having("renew", "owed", "waiting", "count", "asked");
    }

    /** Inside the transaction of the act: both stand, or neither. */
    void follow(@Observes TicketChanged changed) {
        renew(changed.number(), changed.sheet());
    }

    void renew(TicketNumber number, JobSheet sheet) {
        write(number, Waits.hands(sheet), Waits.of(sheet, site.policy()));
    }

    private void write(TicketNumber number, Set<String> hands, List<Wait> waits) {
        Sql.of(database, text.statement("renew"))
                .with("ticket", number.serial())
                .with("hands", hands.toArray(String[]::new))
                .with("waits", written(waits))
                .run();
    }

    /** Of a ticket whose record does not hold nothing waits but its alarm. */
    void leave(TicketNumber number) {
        write(number, Set.of(), List.of());
    }

    /** Tickets from before this was kept, at most 100. */
    List<Integer> owed() {
        return Sql.of(database, text.statement("owed")).values(Integer.class);
    }

    /** What waits for that person by now, or for somebody it stands in for, the longest waiting first. */
    List<WaitingLine> waiting(Actor actor, int most) {
        return waitingFor(actor, most).rows(WaitingLine.class);
    }

    /** How many things wait for that person by now, and for those it stands in for. */
    public long count(Actor actor) {
        return counted(actor).value(Long.class);
    }

    /** What that person asked of others and waits for, the longest waiting first. */
    List<WaitingLine> asked(Actor actor, int most) {
        return askedBy(actor, most).rows(WaitingLine.class);
    }

    Sql waitingFor(Actor actor, int most) {
        return ofActor("waiting", actor).with("most", most);
    }

    Sql counted(Actor actor) {
        return ofActor("count", actor);
    }

    Sql askedBy(Actor actor, int most) {
        return Sql.of(database, text.statement("asked"))
                .with("account", actor.account())
                .with("now", clock.instant())
                .with("most", most);
    }

    private Sql ofActor(String statement, Actor actor) {
        return Sql.of(database, text.statement(statement))
                .with("account", actor.account())
                .with("now", clock.instant())
                .with("supervisor", actor.is(Role.SUPERVISOR))
                .with("mentor", actor.is(Role.MENTOR));
    }

    private String written(List<Wait> waits) {
        try {
            return json.writeValueAsString(waits);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("waits are records of names, numbers and moments", e);
        }
    }
}
