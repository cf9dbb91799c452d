package org.benchtrail.core.method;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.fail;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.benchtrail.core.method.desk.Opened;
import org.benchtrail.core.method.desk.Refused;

/**
 * A desk with one ticket and a clock of its own. Every act goes through {@link Method#decide}; what is allowed is appended,
 * what is refused leaves one {@code Refused} entry, as the server does it.
 */
final class TicketFixture {
    static final Instant START = Instant.parse("2031-03-03T08:00:00Z");

    private final Policy policy;
    private final List<Entry> trail = new ArrayList<>();
    private JobSheet sheet;
    private Instant now = START;
    private int requests;
    private boolean together;

    private TicketFixture(Opened opened, Actor by, Policy policy) {
        this.policy = policy;
        Entry first = new Entry(stamp(1, by, opened), opened);
        trail.add(first);
        sheet = JobSheet.open(first);
    }

    static TicketFixture open(Opened opened, Actor by) {
        return new TicketFixture(opened, by, Policy.usual());
    }

    /** One person at the desk. */
    final class Person {
        private final Actor actor;

        Person(Actor actor) {
            this.actor = actor;
        }

        /** Tries it; appends the fact, or the refusal. */
        Decision does(Fact fact) {
            begin();
            Decision decision = Method.decide(sheet, fact, actor, policy, now, "request " + requests);
            if (decision instanceof Decision.Refused refused) {
                append(new Refused(
                        fact.getClass().getSimpleName(),
                        refused.missing().stream().map(Missing::code).toList()));
            } else {
                append(fact);
            }
            return decision;
        }

        /** Whether it would be allowed now; nothing is appended. */
        boolean may(Fact fact) {
            return Method.decide(sheet, fact, actor, policy, now, "") instanceof Decision.Allowed;
        }

        /** Tries to do all in one request; answers with what is missing for the first that is refused. */
        List<Missing> together(Fact... facts) {
            List<Missing> missing = new ArrayList<>();
            TicketFixture.this.together(() -> {
                for (Fact fact : facts) {
                    if (missing.isEmpty() && does(fact) instanceof Decision.Refused refused) {
                        missing.addAll(refused.missing());
                    }
                }
            });
            return missing;
        }

        /** Does what has to be allowed. */
        int records(Fact fact) {
            if (does(fact) instanceof Decision.Refused refused) {
                fail(actor.account() + " could not record " + fact + ": " + refused.missing());
            }
            return sheet.entries();
        }

        /** Tries what has to be refused; answers with what is missing. */
        List<Missing> isRefused(Fact fact) {
            int before = sheet.entries();
            Course course = sheet.course();
            if (!(does(fact) instanceof Decision.Refused refused)) {
                return fail(actor.account() + " was allowed to record " + fact);
            }
            assertEquals(before + 1, sheet.entries(), "a refusal is one entry");
            assertEquals(course, sheet.course(), "a refusal moves nothing");
            return refused.missing();
        }

        List<String> missingFor(Fact fact) {
            return isRefused(fact).stream().map(Missing::code).toList();
        }

        void lacks(String code, Fact fact) {
            assertEquals(List.of(code), missingFor(fact));
        }

        /** Appends without asking, as a trail from elsewhere might hold it. */
        int forces(Fact fact) {
            begin();
            append(fact);
            return sheet.entries();
        }

        private void append(Fact fact) {
            Entry entry = new Entry(stamp(sheet.entries() + 1, actor, fact), fact);
            trail.add(entry);
            sheet = sheet.with(entry);
        }
    }

    Person as(Actor actor) {
        return new Person(actor);
    }

    /** Who has the ticket. */
    Person assignee() {
        return as(assigneeActor());
    }

    Actor assigneeActor() {
        return Sheets.person(String.valueOf(sheet.course().assignee()));
    }

    TicketFixture passes(Duration time) {
        now = now.plus(time);
        return this;
    }

    /** Each act is a request of its own, a minute after the one before; those done together are one. */
    private void begin() {
        now = now.plusSeconds(60);
        requests += together ? 0 : 1;
    }

    /** What is done in here was sent in one request. */
    TicketFixture together(Runnable acts) {
        requests++;
        together = true;
        try {
            acts.run();
        } finally {
            together = false;
        }
        return this;
    }

    /** As the server makes it. */
    private Stamp stamp(int entry, Actor by, Fact fact) {
        Origin origin = new Origin(Channel.PAGE, "request " + requests, "policy of the test", null);
        return fact.saidByServer()
                ? new Stamp(entry, now, Stamp.SERVER, Set.of(), origin.ofServerFor(by.account()))
                : new Stamp(entry, now, by.account(), by.roles(), origin);
    }

    JobSheet sheet() {
        return sheet;
    }

    List<Entry> trail() {
        return List.copyOf(trail);
    }

    Instant now() {
        return now;
    }

    Policy policy() {
        return policy;
    }

    Step step() {
        return sheet.step();
    }

    /** Entry number of the latest fact of that kind. */
    int latest(Class<? extends Fact> kind) {
        return sheet.latest(kind).orElseThrow().entry();
    }

    Requirement.State state(Requirement requirement) {
        return Method.gate(sheet, policy, now).stream()
                .filter(s -> s.requirement() == requirement)
                .findFirst()
                .orElseThrow()
                .state();
    }

    /** Codes of what keeps the step from being left now, without trying. */
    List<String> missing() {
        return Method.gate(sheet, policy, now).stream()
                .filter(s -> s.state() == Requirement.State.MISSING)
                .map(s -> s.requirement().code())
                .toList();
    }
}
