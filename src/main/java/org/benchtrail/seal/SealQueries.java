package org.benchtrail.seal;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.Duration;
import java.time.ZoneId;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.benchtrail.core.integrity.Checkpoint;
import org.benchtrail.core.integrity.SignedNote;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.people.Permission;
import org.benchtrail.people.Permissions;
import org.benchtrail.platform.Moments;
import org.benchtrail.trail.Alarms;
import org.jspecify.annotations.Nullable;

/** What the page of the seal shows, read in one transaction. */
@ApplicationScoped
class SealQueries {
    private static final int MOST = 10;
    private static final int MOST_BROKEN = 50;
    static final int PAGE = 50;

    private final LogRows rows;
    private final WitnessRows witnesses;
    private final TimeStampRows stamps;
    private final SealTroubles troubles;
    private final WitnessedHeads heads;
    private final LogKeys keys;
    private final Incidents incidents;
    private final Alarms alarms;
    private final VerificationRows runs;
    private final Clock clock;

    SealQueries(
            LogRows rows,
            WitnessRows witnesses,
            TimeStampRows stamps,
            SealTroubles troubles,
            WitnessedHeads heads,
            LogKeys keys,
            Incidents incidents,
            Alarms alarms,
            VerificationRows runs,
            Clock clock) {
        this.rows = rows;
        this.witnesses = witnesses;
        this.stamps = stamps;
        this.troubles = troubles;
        this.heads = heads;
        this.keys = keys;
        this.incidents = incidents;
        this.alarms = alarms;
        this.runs = runs;
        this.clock = clock;
    }

    @Transactional
    SealView view(Actor viewer, ZoneId zone) {
        Permissions.require(Permission.SEE_ALARMS, viewer);
        LogRows.Waiting waiting = rows.waiting();
        List<WitnessRows.Event> answers = witnesses.newest();
        SealView.@Nullable Look look = runs.newest().map(run -> look(run, zone)).orElse(null);
        List<String> wrong = troubles.all(zone);
        return new SealView(
                wrong,
                Permissions.allow(Permission.KEEP_LOG, viewer)
                        && wrong.stream().anyMatch(one -> one.contains(LostNote.GONE)),
                broken(),
                waiting.count(),
                troubles.age(waiting.oldest()),
                head(zone).orElse(null),
                answers(answers, false, zone),
                stamps.newest(Long.MAX_VALUE)
                        .map(s -> new SealView.StampLine(s.size(), Moments.text(s.at(), zone), s.by()))
                        .orElse(null),
                answers(answers, true, zone),
                heads(Long.MAX_VALUE, MOST, zone),
                List.copyOf(keys.known().good()),
                incidents.newest().stream()
                        .limit(MOST)
                        .map(i -> new SealView.IncidentLine(Moments.text(i.at(), zone), i.about(), i.sentence()))
                        .toList(),
                look);
    }

    /** Heads from the largest of those that have at most so many leaves downwards. */
    @Transactional
    List<SealView.HeadLine> heads(long largest, Actor viewer, ZoneId zone) {
        Permissions.require(Permission.SEE_ALARMS, viewer);
        return heads(largest, PAGE, zone);
    }

    private List<SealView.HeadLine> heads(long largest, int most, ZoneId zone) {
        return rows.headsFrom(largest, most).stream()
                .map(signed -> new SealView.HeadLine(
                        signed.size(), root(signed.note()), Moments.text(signed.signedAt(), zone)))
                .toList();
    }

    /** Tickets whose trail did not hold at an act or a look, the newest first. */
    private List<String> broken() {
        return Stream.concat(rows.broken(MOST_BROKEN).stream(), alarms.standing().stream())
                .distinct()
                .sorted(Comparator.reverseOrder())
                .limit(MOST_BROKEN)
                .map(serial -> new TicketNumber(serial).toString())
                .toList();
    }

    /** What each witness answered last, or the authority of time-stamps, whose answers stand beside theirs. */
    private List<SealView.WitnessLine> answers(List<WitnessRows.Event> newest, boolean ofStamps, ZoneId zone) {
        return newest.stream()
                .filter(e -> e.witness().equals(TimeStamping.NAME) == ofStamps)
                .map(e -> new SealView.WitnessLine(
                        e.witness(),
                        e.size(),
                        Moments.text(e.at(), zone),
                        answer(e.status(), e.detail()),
                        heads.looked(e.witness())
                                .map(l -> "its own head: " + l.words() + ", looked at " + Moments.text(l.at(), zone))
                                .orElse("")))
                .toList();
    }

    private static String root(String note) {
        return Checkpoint.parse(SignedNote.parse(note).text()).root().base64();
    }

    private Optional<SealView.Head> head(ZoneId zone) {
        return rows.newest().map(signed -> {
            SignedNote note = rows.note(signed);
            Checkpoint checkpoint = Checkpoint.parse(note.text());
            return new SealView.Head(
                    checkpoint.origin(),
                    checkpoint.size(),
                    Moments.text(rows.firstSigned().orElseThrow(), zone),
                    Moments.text(signed.signedAt(), zone),
                    PaperHead.vouched(note),
                    witnesses
                            .firstSigned()
                            .map(
                                    at -> "since " + Moments.text(at, zone)
                                            + " a witness has signed heads: a look holds the times of entries against its clock")
                            .orElse(
                                    "no witness has signed any head, so whether an entry was made at the time that it bears"
                                            + " cannot be told"));
        });
    }

    private static String answer(int status, String detail) {
        return switch (status) {
            case 200 -> detail.isEmpty() ? "signed" : detail;
            case 0 -> "no answer";
            case 400 -> "400 " + detail + " A fault of this server: this head is not shown to it again.";
            case 403 -> "403 " + detail + " It does not trust this log's key: give it the verifier key below.";
            case 404 ->
                "404 " + detail + " It does not know this log: let whoever runs it add its origin with the key below.";
            default -> status + " " + detail;
        };
    }

    private SealView.Look look(VerificationRows.Run run, ZoneId zone) {
        List<SealView.FindingLine> findings = runs.findings(run.id()).stream()
                .map(f -> new SealView.FindingLine(
                        f.what(),
                        f.place(),
                        f.sentence(),
                        f.head() == null ? "" : "The first head that proves it is that of " + f.head() + " leaves."))
                .toList();
        boolean going = run.ended() == null;
        String found = findings.isEmpty() ? "all of it holds" : SealTroubles.places(findings.size());
        return new SealView.Look(
                going,
                Moments.text(run.started(), zone),
                run.by(),
                (run.again() == null ? "" : "anew, since the one before was interrupted; ")
                        + (going || run.stopped()
                                ? run.done() + " of " + run.size() + " leaves were looked at"
                                        + (run.interrupted()
                                                ? "; it was interrupted, and is begun anew by itself"
                                                : run.stopped() ? "; it was stopped" : rate(run))
                                : run.size() + " leaves, every record and every ticket: " + found),
                findings);
    }

    /** How fast it is, and what is left, of a look that goes on. */
    private String rate(VerificationRows.Run run) {
        long seconds =
                Math.max(1, Duration.between(run.started(), clock.instant()).toSeconds());
        long each = run.done() / seconds;
        return each == 0 || run.done() == run.size()
                ? ""
                : ", " + each + " a second, about " + (run.size() - run.done()) / each + " s left";
    }
}
