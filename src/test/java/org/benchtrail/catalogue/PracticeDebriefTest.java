package org.benchtrail.catalogue;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.function.UnaryOperator;
import org.benchtrail.BesideOthers;
import org.benchtrail.core.diagnosis.Cause;
import org.benchtrail.core.diagnosis.CauseCategory;
import org.benchtrail.core.diagnosis.Model;
import org.benchtrail.core.diagnosis.ModelSettings;
import org.benchtrail.core.diagnosis.path.PathCatalogue;
import org.benchtrail.core.practice.VirtualClock;
import org.benchtrail.core.practice.job.DeviceAct;
import org.benchtrail.core.practice.job.Family;
import org.benchtrail.core.practice.job.Truth;
import org.benchtrail.core.practice.job.Truth.Played;
import org.benchtrail.core.training.Debrief;
import org.benchtrail.core.training.Players;
import org.benchtrail.core.training.Ties;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** What a debrief says of any job, with the delivered catalogue, and that no figure of a catalogue reaches a device. */
@BesideOthers
class PracticeDebriefTest {
    private static final int SEEDS = Integer.getInteger("practice.debriefs", 4);
    private static final VirtualClock MORNING = VirtualClock.at(Instant.parse("2031-03-03T08:00:00Z"));

    private static final CatalogueVersion DELIVERED =
            CatalogueVersion.of(1, CatalogueFile.delivered(), PathCatalogue.NONE);

    private static Model model(Family family) {
        return DELIVERED.model(Ties.of(family).category()).orElseThrow();
    }

    /** All that a played job has to show, each act with its words, times and harm. */
    private static List<String> shown(Played played) {
        List<String> lines = new ArrayList<>();
        played.steps()
                .forEach(s -> lines.add(s.act().id() + " " + s.answer().words() + " "
                        + s.answer().seen() + " " + s.answer().handsOn() + " "
                        + s.answer().waiting() + " " + s.answer().harm()));
        lines.add(played.clock() + " " + played.device().isWell());
        return lines;
    }

    private static Played again(Truth truth, Played played, VirtualClock clock) {
        return truth.played(
                clock, played.steps().stream().map(s -> s.act().id()).toList());
    }

    @ParameterizedTest
    @EnumSource(Family.class)
    void whatTheCatalogueWouldHaveDone_isTheSameEachTime(Family family) {
        for (int i = 0; i < SEEDS; i++) {
            Truth truth = PracticePlayedTest.truth(family, i);
            Played nothing = truth.opened(MORNING);
            Debrief one = Debrief.of(truth, nothing, model(family));
            Debrief other = Debrief.of(truth, nothing, model(family));
            assertEquals(
                    shown(one.recommended().played()), shown(other.recommended().played()));
            assertEquals(one.recommended().minutes(), other.recommended().minutes());
            assertEquals(one.least(), other.least());
        }
    }

    /** Somebody who does anything at all: no act is better than the best, and the total is theirs. */
    @ParameterizedTest
    @EnumSource(Family.class)
    void regret_isNeverLessThanNothing_whateverIsDone(Family family) {
        Random random = new Random(20_261_128);
        int diverging = 0;
        for (int i = 0; i < SEEDS; i++) {
            Truth truth = PracticePlayedTest.truth(family, i);
            Played played = truth.opened(MORNING);
            for (int act = 0; act < 14; act++) {
                played = played.with(
                        family.acts().get(random.nextInt(family.acts().size())));
            }
            Debrief debrief = Debrief.of(truth, played, model(family));
            double sum = 0;
            for (Debrief.Judged act : debrief.acts()) {
                double regret = act.regret().orElse(0);
                assertTrue(regret >= 0 && Double.isFinite(regret), act.act() + ": " + regret);
                boolean demanded =
                        act.act().way() == DeviceAct.Way.PREPARE || act.act().way() == DeviceAct.Way.TRY;
                assertTrue(!demanded || act.regret().isEmpty(), "never a detour: " + act.act());
                sum += regret;
                diverging += act.diverges() ? 1 : 0;
            }
            assertEquals(sum, debrief.regret(), 1e-9);
            assertEquals(
                    debrief.acts(), Debrief.of(truth, played, model(family)).acts(), "the same each time");
        }
        assertTrue(diverging > SEEDS, "too few detours to prove much: " + diverging);
    }

    private static Model changed(Model model, UnaryOperator<Cause> cause) {
        CauseCategory c = model.category();
        return new Model(
                new CauseCategory(
                        c.id(),
                        c.title(),
                        c.escalateMinutes(),
                        c.groups(),
                        c.findings(),
                        c.causes().stream().map(cause).toList(),
                        c.sharedRepairs(),
                        c.hints()),
                ModelSettings.STANDARD);
    }

    /** Whatever the catalogue holds likely: it chooses other acts, and each of them is answered as it always is. */
    @ParameterizedTest
    @EnumSource(Family.class)
    void noFigureOfTheCatalogue_reachesADevice(Family family) {
        Random random = new Random(20_261_128);
        int others = 0;
        for (int i = 0; i < SEEDS; i++) {
            Truth truth = PracticePlayedTest.truth(family, i);
            Model shaken = changed(
                    model(family),
                    c -> new Cause(
                            c.id(),
                            c.name(),
                            0.01 + random.nextDouble(),
                            c.deviations(),
                            c.confirm(),
                            c.confirmMinutes(),
                            c.repair(),
                            c.caution(),
                            c.confirmBy(),
                            c.was()));
            Played usual = new Players(truth, model(family)).recommended().played();
            Played played = new Players(truth, shaken).recommended().played();
            assertEquals(shown(again(truth, played, VirtualClock.at(Instant.EPOCH))), shown(played));
            assertEquals(shown(again(truth, usual, VirtualClock.at(Instant.EPOCH))), shown(usual));
            others += shown(usual).equals(shown(played)) ? 0 : 1;
        }
        assertNotEquals(0, others, "the figures change nothing at all: nothing is shown");
    }
}
