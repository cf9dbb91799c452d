package org.benchtrail.training;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.Clock;
import java.time.Duration;
import java.util.List;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Fact;
import org.benchtrail.core.method.Missing;
import org.benchtrail.core.method.desk.MoveFact;
import org.benchtrail.core.practice.job.Family;
import org.benchtrail.core.practice.job.Truth;
import org.benchtrail.site.SiteBook;
import org.benchtrail.ticket.Act;
import org.benchtrail.ticket.Diagnoses;
import org.benchtrail.ticket.Work;
import org.benchtrail.trail.TrailStore;

/** Practice jobs of earlier days, for the demo: by the same acts as any other, under a clock that is behind. In one transaction. */
@ApplicationScoped
public class PracticeHistory {
    private final PracticeStore store;
    private final TrailStore trail;
    private final Diagnoses diagnoses;
    private final SiteBook site;
    private final Clock clock;

    PracticeHistory(PracticeStore store, TrailStore trail, Diagnoses diagnoses, SiteBook site, Clock clock) {
        this.store = store;
        this.trail = trail;
        this.diagnoses = diagnoses;
        this.site = site;
        this.clock = clock;
    }

    /** A job that was begun so long ago, on a device with that fault. */
    public Job begin(Family family, String fault, Duration ago, Actor actor) {
        PracticeActs acts = new PracticeActs(store, trail, diagnoses, site, Clock.offset(clock, ago.negated()));
        String seed = Truth.of(family, new byte[] {(byte) family.ordinal(), (byte) fault.length()})
                .seed();
        return new Job(acts, acts.begin(new Truth(family, seed, fault), actor), actor);
    }

    /** One of them, while it is worked. */
    public final class Job {
        private final PracticeActs acts;
        private final int id;
        private final Actor actor;

        Job(PracticeActs acts, int id, Actor actor) {
            this.acts = acts;
            this.id = id;
            this.actor = actor;
        }

        /** Number of the last entry. */
        public int entries() {
            return store.job(id, actor.account()).orElseThrow().trail().size();
        }

        /** @return what the method lacks; empty if it was done */
        public List<Missing> record(Fact fact) {
            List<Act> recorded = fact instanceof MoveFact ? List.of() : List.of(sheet -> fact);
            MoveFact move = fact instanceof MoveFact made ? made : null;
            return acts.write(id, entries(), sheet -> new Work(recorded, move), actor)
                    .missing();
        }

        /** Something done with the device, or waited for; the mentor is asked by waiting for them. */
        public List<Missing> act(String act) {
            return (act.equals(Deed.MENTOR.id())
                            ? acts.mentor(id, entries(), actor)
                            : acts.act(id, entries(), act, actor))
                    .missing();
        }

        public void giveUp() {
            acts.giveUp(id, actor);
        }
    }
}
