package org.benchtrail.site;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Event;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.DateTimeException;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.stream.Stream;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.PolicyFingerprint;
import org.benchtrail.core.site.SiteHistory;
import org.benchtrail.core.site.SiteRules;
import org.benchtrail.core.text.PlainText;
import org.benchtrail.people.Permission;
import org.benchtrail.people.Permissions;
import org.benchtrail.platform.Stale;
import org.jboss.logging.Logger;

/** Decides about calendar, times and policies: what counted until then goes on counting for the time before. */
@ApplicationScoped
@Transactional
public class SiteActs {
    private static final Logger LOG = Logger.getLogger(SiteActs.class);
    private static final Duration FURTHEST = Duration.ofDays(366);
    private static final int LONGEST_NOTE = 300;

    private final SiteVersions versions;
    private final SiteBook book;
    private final Event<SiteChanged> changed;
    private final Clock clock;

    SiteActs(SiteVersions versions, SiteBook book, Event<SiteChanged> changed, Clock clock) {
        this.versions = versions;
        this.book = book;
        this.changed = changed;
        this.clock = clock;
    }

    /** When a decision comes into force, and why it is made; the moment by the clock of the site, empty for at once. */
    public record Decision(String inForce, String note) {
        public Decision {
            inForce = PlainText.line(inForce);
            note = PlainText.line(note);
        }
    }

    /**
     * Decides what counts from a moment on. Tickets that are open get their due times by it; closed ones keep theirs.
     *
     * @param seen number of the latest decision that the actor has seen
     * @return its number
     * @throws Stale if somebody decided meanwhile
     * @throws Invalid if something typed cannot be taken, or nothing would change
     */
    public int decide(RulesText typed, Decision decision, int seen, Actor actor) {
        Permissions.require(Permission.SET_POLICIES, actor);
        SiteRules rules = typed.rules();
        versions.lock();
        SiteHistory before = book.latest();
        if (before.latest() != seen) {
            throw new Stale(before.latest());
        }
        SiteVersion row = new SiteVersion();
        row.number = seen + 1;
        row.made = clock.instant().truncatedTo(ChronoUnit.MICROS);
        row.madeBy = actor.account();
        row.inForce = inForce(decision, row.made, rules.calendar().zone());
        row.note = decision.note();
        row.rules = RulesText.of(rules).json();
        new Invalid.Collector()
                .require(row.note.length() <= LONGEST_NOTE, "note", "Shorten this to 300 characters.")
                .require(PlainText.isText(row.note), "note", PlainText.WHAT_TO_DO)
                .require(changes(before, row), "note", "Nothing would change.")
                .throwIfAny();
        versions.persistAndFlush(row);
        // the trail names the policy by its fingerprint; this line says what it was
        LOG.infof("policy %s from %s: %s", PolicyFingerprint.of(rules.policy()), row.inForce, rules.policy());
        changed.fire(new SiteChanged(book.latest()));
        return row.number;
    }

    /** Whether anything that counts then, or was to count later, is something else. */
    private static boolean changes(SiteHistory before, SiteVersion row) {
        return Stream.concat(
                        Stream.of(row.inForce),
                        before.versions().stream()
                                .map(SiteHistory.Version::from)
                                .filter(from -> from.isAfter(row.inForce)))
                .anyMatch(at -> !RulesText.of(before.at(at).rules()).json().equals(row.rules));
    }

    private static Instant inForce(Decision decision, Instant now, ZoneId zone) {
        if (decision.inForce().isEmpty()) {
            return now;
        }
        Instant from;
        try {
            from = LocalDateTime.parse(decision.inForce()).atZone(zone).toInstant();
        } catch (DateTimeException e) {
            throw new Invalid(
                    "inForce", "Give the day and the time from which it counts, or leave it empty for at once.");
        }
        new Invalid.Collector()
                .require(
                        !from.isBefore(now),
                        "inForce",
                        "It can count from now on, or from later; the past stays as it was.")
                .require(!from.isAfter(now.plus(FURTHEST)), "inForce", "Choose a moment within a year.")
                .throwIfAny();
        return from;
    }

    /** A decision as it is listed. */
    public record Made(int number, Instant made, String madeBy, Instant inForce, String note, RulesText rules) {}

    /** All decisions, the latest first; what counted before the first of them is not one. */
    public List<Made> made(Actor actor) {
        Permissions.require(Permission.SEE_TICKETS, actor);
        return versions.list("order by number desc").stream()
                .map(row ->
                        new Made(row.number, row.made, row.madeBy, row.inForce, row.note, RulesText.read(row.rules)))
                .toList();
    }
}
