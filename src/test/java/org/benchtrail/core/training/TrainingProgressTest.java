package org.benchtrail.core.training;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.benchtrail.core.Published;
import org.benchtrail.core.method.Category;
import org.benchtrail.core.method.Requirements;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class TrainingProgressTest {
    private static final String SCIPY = "SciPy, beta.ppf (Clopper-Pearson), calculated apart";

    private static TrainingProgress.Job job(Category trade, boolean practice, boolean... met) {
        List<CoachEvent> events = new ArrayList<>();
        for (boolean one : met) {
            events.add(new CoachEvent.Occasion(Instant.EPOCH, Instant.EPOCH, one, null));
        }
        events.add(new CoachEvent.NearMiss(Instant.EPOCH));
        return new TrainingProgress.Job(trade, practice, Map.of("onset-known", events));
    }

    private static boolean[] times(int met, int looked) {
        boolean[] all = new boolean[looked];
        for (int i = 0; i < met; i++) {
            all[i] = true;
        }
        return all;
    }

    @ParameterizedTest
    @CsvSource({
        "3, 4, 0.2486046257, 0.9872585449",
        "9, 10, 0.6058366976, 0.9948838031",
        "18, 20, 0.7173814751, 0.9819347969"
    })
    void intervals_areExact(int met, int looked, double lower, double upper) {
        TrainingProgress.Line line = TrainingProgress.of(List.of(job(Category.HEAT, false, times(met, looked))))
                .lines()
                .get(0);
        Published.check(SCIPY, lower, line.interval().lower(), 1e-8);
        Published.check(SCIPY, upper, line.interval().upper(), 1e-8);
    }

    @Test
    void kindsOfTrouble_andLiveAndPractice_areApart_andWhatNobodyLookedAtIsNamed() {
        TrainingProgress progress = TrainingProgress.of(List.of(
                job(Category.HEAT, true, true),
                job(Category.POWER, false, false),
                job(Category.HEAT, false, true, false),
                job(Category.HEAT, false, true)));
        assertEquals(
                List.of("POWER live 0/1", "HEAT live 2/3", "HEAT practice 1/1").stream()
                        .sorted()
                        .toList(),
                progress.lines().stream()
                        .map(l -> l.trade() + (l.practice() ? " practice " : " live ")
                                + l.met().hits() + "/" + l.met().trials())
                        .sorted()
                        .toList());
        assertEquals(Requirements.all().size() - 1, progress.unseen().size());
    }

    @Test
    void aLine_saysNothing_ofFewerThanFive() {
        assertFalse(TrainingProgress.of(List.of(job(Category.HEAT, false, times(4, 4))))
                .lines()
                .get(0)
                .isSpokenOf());
        assertTrue(TrainingProgress.of(List.of(job(Category.HEAT, false, times(5, 5))))
                .lines()
                .get(0)
                .isSpokenOf());
    }
}
