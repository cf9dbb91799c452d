package org.benchtrail.core.training;

import static org.benchtrail.core.training.CoachLevel.COMPLETION;
import static org.benchtrail.core.training.CoachLevel.EXAMPLE;
import static org.benchtrail.core.training.CoachLevel.PROMPT;
import static org.benchtrail.core.training.CoachLevel.SILENT;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.benchtrail.core.training.CoachChoices.Choice;
import org.benchtrail.core.training.CoachEvent.CriticalMiss;
import org.benchtrail.core.training.CoachEvent.NearMiss;
import org.benchtrail.core.training.CoachEvent.Occasion;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class CoachStandingTest {
    private static final Instant BEGUN = Instant.parse("2026-03-02T08:00:00Z");
    private static final Duration EACH = Duration.ofDays(1);
    /** Occasions until it is silent without a miss. */
    private static final int TO_COMPLETION = 8;

    private static final int TO_PROMPT = TO_COMPLETION + 11;
    private static final int TO_SILENT = TO_PROMPT + 14;

    private final List<CoachEvent> events = new ArrayList<>();
    private Instant now = BEGUN.plus(Duration.ofDays(30));

    private void met(int times) {
        for (int i = 0; i < times; i++) {
            occasion(true, null);
        }
    }

    private void missed() {
        occasion(false, null);
    }

    private void occasion(boolean met, @Nullable CoachLevel chosen) {
        now = now.plus(EACH);
        events.add(new Occasion(now, now, met, chosen == null ? null : new Choice("", chosen, now)));
    }

    private CoachStanding standing() {
        return standing(false, now);
    }

    private CoachStanding standing(boolean safety, Instant when) {
        return CoachStanding.of(events, safety, BEGUN, when, CoachLevel.MET);
    }

    private CoachLevel level() {
        return standing().level();
    }

    @Test
    void nothingRecorded_showsTheWholeExample() {
        assertEquals(EXAMPLE, level());
        assertEquals(CoachStanding.START, standing());
    }

    @Test
    void whatIsMetAndJudged_goesDownALevelAtATime_eachCountedByItself() {
        met(TO_COMPLETION - 1);
        assertEquals(new CoachStanding(EXAMPLE, 7, 7, Instant.MIN), standing());
        met(1);
        assertEquals(new CoachStanding(COMPLETION, 0, 0, Instant.MIN), standing());
        met(10);
        assertEquals(COMPLETION, level());
        met(1);
        assertEquals(PROMPT, level());
        met(13);
        assertEquals(PROMPT, level());
        met(1);
        assertEquals(SILENT, level());
        met(50);
        assertEquals(SILENT, level());
    }

    /** Old tickets that somebody looks at late were worked with the example on the page. */
    @Test
    void whatWasWorkedWithMoreHelp_doesNotCountForLess() {
        met(TO_COMPLETION);
        Instant early = BEGUN.plus(Duration.ofDays(31));
        for (int i = 0; i < 40; i++) {
            now = now.plus(EACH);
            events.add(new Occasion(now, early, true, null));
        }
        assertEquals(new CoachStanding(COMPLETION, 0, 0, Instant.MIN), standing());
        events.add(new Occasion(now, early, false, null));
        assertEquals(new CoachStanding(COMPLETION, 0, 1, Instant.MIN), standing());
    }

    @Test
    void whoAskedForMore_isNotFadedByIt_andWhoTookLessIs() {
        met(TO_COMPLETION);
        for (int i = 0; i < 30; i++) {
            occasion(true, EXAMPLE);
        }
        assertEquals(COMPLETION, level());
        for (int i = 0; i < 11; i++) {
            occasion(true, PROMPT);
        }
        assertEquals(PROMPT, level());
    }

    @Test
    void twoMissesWithinTen_bringALevelBack_threeAfterThatNotAtOnce() {
        met(TO_SILENT);
        missed();
        assertEquals(SILENT, level());
        met(8);
        missed();
        assertEquals(PROMPT, level());
        assertEquals(now, standing().raised());
        missed();
        assertEquals(PROMPT, level());
        met(9);
        missed();
        assertEquals(PROMPT, level(), "the eleventh since the last miss");
        missed();
        assertEquals(COMPLETION, level());
        missed();
        missed();
        assertEquals(COMPLETION, level(), "only at a prompt or less");
    }

    @Test
    void tenthOccasionIsWithinTen_eleventhIsNot() {
        met(TO_SILENT);
        missed();
        met(9);
        missed();
        assertEquals(SILENT, level());
    }

    @Test
    void nearMiss_bringsOneLevelBack_toTheTopAtMost() {
        met(TO_PROMPT);
        events.add(new NearMiss(now));
        assertEquals(COMPLETION, level());
        events.add(new NearMiss(now));
        events.add(new NearMiss(now));
        assertEquals(EXAMPLE, level());
    }

    @Test
    void criticalMiss_bringsTheExampleWithItsBlankBack_andCountsBeginAnew() {
        met(TO_SILENT);
        events.add(new CriticalMiss(now));
        assertEquals(new CoachStanding(COMPLETION, 0, 0, now), standing());
        met(10);
        events.add(new CriticalMiss(now));
        met(1);
        assertEquals(new CoachStanding(COMPLETION, 1, 1, standing().raised()), standing());
        events.clear();
        met(7);
        events.add(new CriticalMiss(now));
        assertEquals(new CoachStanding(EXAMPLE, 0, 0, Instant.MIN), standing(), "not less than there was");
    }

    @Test
    void ninetyDaysWithoutAnOccasion_itIsSilentNoLonger() {
        met(TO_SILENT);
        assertEquals(
                SILENT,
                standing(false, now.plus(Duration.ofDays(90)).minusNanos(1)).level());
        assertEquals(PROMPT, standing(false, now.plus(Duration.ofDays(90))).level());
        events.clear();
        met(TO_COMPLETION);
        assertEquals(COMPLETION, standing(false, now.plus(Duration.ofDays(900))).level());
    }

    /** Judged late: the time of the work counts. */
    @Test
    void whatIsJudgedAfterNinetyDays_isNoOccasionOfToday() {
        met(TO_SILENT);
        Instant worked = now;
        now = now.plus(Duration.ofDays(100));
        events.add(new Occasion(now, worked, true, null));
        assertEquals(PROMPT, level());
    }

    @Test
    void safety_isNeverSilent_andStillComesBack() {
        met(TO_SILENT + 100);
        assertEquals(PROMPT, standing(true, now).level());
        missed();
        missed();
        assertEquals(COMPLETION, standing(true, now).level());
    }

    @Test
    void withoutHelpInTheFirstWeek_countsAtEveryLevel_untilALevelComesBack() {
        now = BEGUN;
        for (int i = 0; i < 14; i++) {
            now = now.plus(Duration.ofHours(11));
            events.add(new Occasion(now, now, true, new Choice("", SILENT, now)));
        }
        assertTrue(now.isBefore(BEGUN.plus(Duration.ofDays(7))));
        assertEquals(new CoachStanding(COMPLETION, 14, 14, Instant.MIN).level(), COMPLETION);
        occasion(true, SILENT);
        assertEquals(SILENT, afterOneEach());
        events.add(new NearMiss(now));
        assertEquals(new CoachStanding(PROMPT, 0, 0, now), standing());
    }

    /** Each level is left by one occasion more, because what was met without help is counted already. */
    private CoachLevel afterOneEach() {
        for (int i = 0; i < 2; i++) {
            occasion(true, null);
        }
        return level();
    }

    @Test
    void withoutHelpAfterTheFirstWeek_countsAsAnyOther() {
        for (int i = 0; i < 14; i++) {
            occasion(true, SILENT);
        }
        assertEquals(new CoachStanding(COMPLETION, 6, 6, Instant.MIN), standing());
    }

    /** Who turned the coach down before a level came back has it back. */
    @Test
    void aChoice_isShown_untilTheLevelComesBack() {
        Instant before = BEGUN;
        Optional<Choice> silent = Optional.of(new Choice("", SILENT, before));
        assertEquals(SILENT, standing().shown(silent));
        assertEquals(EXAMPLE, standing().shown(Optional.empty()));
        met(TO_COMPLETION);
        events.add(new NearMiss(now));
        assertEquals(EXAMPLE, standing().shown(silent));
        assertEquals(SILENT, standing().shown(Optional.of(new Choice("", SILENT, now.plusNanos(1)))));
    }

    @Test
    void whatWasChosenBeforeTheLevelCameBack_isNoWorkWithoutHelp() {
        now = BEGUN;
        Choice before = new Choice("", SILENT, now);
        for (int i = 0; i < TO_COMPLETION; i++) {
            now = now.plusSeconds(60);
            events.add(new Occasion(now, now, true, before));
        }
        assertEquals(new CoachStanding(COMPLETION, 8, 8, Instant.MIN), standing());
        events.add(new NearMiss(now));
        for (int i = 0; i < TO_COMPLETION; i++) {
            now = now.plusSeconds(60);
            events.add(new Occasion(now, now, true, before));
        }
        assertEquals(COMPLETION, level());
        assertEquals(0, standing().looked());
    }

    @Test
    void theLastWord_ofOneOrOfAll_counts_andSafetyIsNeverSilent() {
        CoachChoices choices = new CoachChoices(List.of(
                new Choice("scope-known", EXAMPLE, BEGUN),
                new Choice("", SILENT, BEGUN.plusSeconds(1)),
                new Choice("onset-known", PROMPT, BEGUN.plusSeconds(2)),
                new Choice("", null, BEGUN.plusSeconds(9))));
        Instant then = BEGUN.plusSeconds(2);
        assertEquals(Optional.empty(), choices.at("scope-known", BEGUN.minusNanos(1)));
        assertEquals(EXAMPLE, choices.at("scope-known", BEGUN).orElseThrow().level());
        assertEquals(SILENT, choices.at("scope-known", then).orElseThrow().level());
        assertEquals(PROMPT, choices.at("onset-known", then).orElseThrow().level());
        assertEquals(PROMPT, choices.at("hazards-screened", then).orElseThrow().level());
        assertEquals(Optional.empty(), choices.at("onset-known", BEGUN.plusSeconds(9)));
    }

    /** Of whom one prompt is left and who meets seven of ten, few are taken for able: a miss counts, and two bring a level back. */
    @Test
    void whoMeetsSevenOfTen_isSeldomSilentWithinThirty() {
        Random random = new Random(20_261_128);
        int people = 2_000;
        int silent = 0;
        for (int person = 0; person < people; person++) {
            events.clear();
            now = BEGUN.plus(Duration.ofDays(30));
            met(TO_PROMPT);
            boolean ever = false;
            for (int i = 0; i < 30 && !ever; i++) {
                occasion(random.nextDouble() < 0.7, null);
                ever = level() == SILENT;
            }
            silent += ever ? 1 : 0;
        }
        System.out.println("silent within thirty, of " + people + " who meet seven of ten: " + silent);
        assertTrue(silent < 0.015 * people, silent + " of " + people);
        assertTrue(silent > 0, "none: too few to prove much");
    }

    /** Whatever is recorded in whatever order: no more than one step down for an occasion, and a miss never takes help away. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5})
    void randomHistories_keepTheRules(long seed) {
        Random random = new Random(seed);
        for (int round = 0; round < 200; round++) {
            events.clear();
            now = BEGUN.plus(Duration.ofDays(30));
            CoachLevel before = EXAMPLE;
            for (int i = 0; i < 60; i++) {
                boolean good = random.nextInt(20) > 0;
                occasion(good, null);
                CoachLevel after = level();
                assertTrue(after.ordinal() >= before.ordinal() - 1, "seed " + seed);
                assertTrue(good || after.ordinal() >= before.ordinal(), "seed " + seed);
                before = after;
            }
            List<CoachEvent> other = new ArrayList<>(events);
            java.util.Collections.reverse(other);
            assertEquals(standing(), CoachStanding.of(other, false, BEGUN, now, CoachLevel.MET), "seed " + seed);
        }
    }
}
