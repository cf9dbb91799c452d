package org.benchtrail.training;

import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Channel;
import org.benchtrail.core.method.Decision;
import org.benchtrail.core.method.Entry;
import org.benchtrail.core.method.Fact;
import org.benchtrail.core.method.FactKinds;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.Method;
import org.benchtrail.core.method.Missing;
import org.benchtrail.core.method.Origin;
import org.benchtrail.core.method.Policy;
import org.benchtrail.core.method.PolicyFingerprint;
import org.benchtrail.core.method.Stamp;
import org.benchtrail.core.method.desk.Corrected;
import org.benchtrail.core.method.desk.Refused;
import org.benchtrail.core.method.identify.FindingAnswered;
import org.benchtrail.core.method.identify.IdentifyRequirement;
import org.benchtrail.core.method.identify.LikenessChecked;
import org.benchtrail.core.method.identify.ReadingRecorded;
import org.benchtrail.ticket.Act;
import org.benchtrail.ticket.Diagnoses;
import org.benchtrail.ticket.Work;

/** One request at work on a practice job: the sheet as it grows, decided by the same method as a ticket's. */
final class PracticeWriting {
    /** Entries with which a job begins: the report, and the sealed truth. */
    private static final int BEGUN = 2;

    private static final String LIKENESS = IdentifyRequirement.LIKENESS_CHECKED.code();

    private final Diagnoses diagnoses;
    private final Policy policy;
    private final Origin origin;
    private final Instant now;
    private final Instant done;
    private final Set<String> shown;
    private final JobSheet start;
    private final List<Entry> entries = new ArrayList<>();
    private JobSheet sheet;

    /**
     * @param now at which it is decided whether it may be done; what is refused takes no time, and its moment tells nothing of the device
     * @param done at which it is recorded once it is done
     * @param shown ids of findings that the device itself answers
     */
    PracticeWriting(JobSheet sheet, Instant now, Instant done, Set<String> shown, Policy policy, Diagnoses diagnoses) {
        start = sheet;
        this.sheet = sheet;
        this.policy = policy;
        this.diagnoses = diagnoses;
        // never before the last entry: what the clock of the job says is never earlier
        this.now = now.truncatedTo(ChronoUnit.MICROS);
        this.done = done.truncatedTo(ChronoUnit.MICROS);
        this.shown = shown;
        origin = new Origin(Channel.PAGE, UUID.randomUUID().toString(), PolicyFingerprint.of(policy), null);
    }

    JobSheet sheet() {
        return sheet;
    }

    List<Entry> entries() {
        return entries;
    }

    /** What somebody typed; a reading comes from the device alone. */
    List<Missing> typed(Work work, Actor actor) {
        List<Missing> missing = all(work.acts(), actor);
        if (missing.isEmpty() && work.move() != null) {
            missing = move(work.move(), actor);
        }
        return missing.isEmpty() ? all(work.after(), actor) : missing;
    }

    private List<Missing> all(List<? extends Act> acts, Actor actor) {
        for (Act act : acts) {
            Fact fact = act.on(sheet);
            if (fact instanceof ReadingRecorded) {
                throw new Invalid("form", "On practice a reading comes from the device: measure it there.");
            }
            if (fact instanceof FindingAnswered answered && shown.contains(answered.finding())) {
                throw new Invalid("form", "On practice the device answers that: look, ask or measure there.");
            }
            if (fact instanceof Corrected corrected && isTheDevices(corrected.entry())) {
                throw new Invalid("form", "What the device showed stands: look again, and say then what is so.");
            }
            List<Missing> missing = record(fact, actor);
            if (!missing.isEmpty()) {
                return missing;
            }
        }
        return List.of();
    }

    /** How the job began, and what came of acts on the device. */
    private boolean isTheDevices(int entry) {
        return entry <= BEGUN
                || sheet.facts().stream()
                        .anyMatch(f -> f.entry() == entry && f.fact().comesFromDevice());
    }

    /** Records it, or takes all of the request back and notes the refusal. */
    List<Missing> record(Fact typed, Actor actor) {
        Fact fact = typed.completedBy(new PracticeKnowledge(sheet, policy, diagnoses));
        if (fact.restsOnRanking()) {
            diagnoses
                    .toRecord(sheet)
                    .filter(ranked -> decide(ranked, actor) instanceof Decision.Allowed)
                    .ifPresent(ranked -> add(ranked, actor));
        }
        if (decide(fact, actor) instanceof Decision.Refused refused) {
            entries.clear();
            sheet = start;
            refuse(fact, refused.missing(), actor);
            return refused.missing();
        }
        add(fact, actor);
        return List.of();
    }

    /** Nothing is ever like a practice job: that is recorded by the server, as on a ticket where it is so. */
    private List<Missing> move(Fact move, Actor actor) {
        Decision decision = decide(move, actor);
        boolean alike = decision instanceof Decision.Refused refused
                && refused.missing().stream().anyMatch(m -> m.code().equals(LIKENESS));
        if (alike && decide(new LikenessChecked(List.of()), actor) instanceof Decision.Allowed) {
            sheet = added(new LikenessChecked(List.of()), serverStamp(actor));
            decision = decide(move, actor);
        }
        if (decision instanceof Decision.Refused refused) {
            refuse(move, refused.missing(), actor);
            return refused.missing();
        }
        add(move, actor);
        return List.of();
    }

    private Decision decide(Fact fact, Actor actor) {
        return Method.decide(sheet, fact, actor, policy, now, origin.request());
    }

    private void refuse(Fact fact, List<Missing> missing, Actor actor) {
        add(
                new Refused(
                        FactKinds.name(fact.getClass()),
                        missing.stream().map(Missing::code).toList()),
                actor,
                now);
    }

    private void add(Fact fact, Actor actor) {
        add(fact, actor, done);
    }

    private void add(Fact fact, Actor actor, Instant moment) {
        Stamp stamp = fact.saidByServer()
                ? serverStamp(actor)
                : new Stamp(sheet.entries() + 1, moment, actor.account(), actor.roles(), origin);
        sheet = added(fact, stamp);
    }

    private Stamp serverStamp(Actor actor) {
        return new Stamp(sheet.entries() + 1, done, Stamp.SERVER, Set.of(), origin.ofServerFor(actor.account()));
    }

    private JobSheet added(Fact fact, Stamp stamp) {
        Entry entry = new Entry(stamp, fact);
        entries.add(entry);
        return sheet.with(entry);
    }
}
