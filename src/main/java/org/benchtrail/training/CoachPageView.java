package org.benchtrail.training;

import java.util.Arrays;
import java.util.List;
import org.benchtrail.core.training.CoachLevel;
import org.benchtrail.core.training.CoachText;
import org.benchtrail.platform.Option;
import org.jspecify.annotations.Nullable;

/**
 * The coach's texts, with how much of them is shown to one person.
 *
 * @param own whether it is the viewer's own, who may choose
 * @param coached whether the person is a trainee: nobody else has any of it on the job sheet
 * @param trainees of the viewer, by login and name
 */
record CoachPageView(
        String login, String name, boolean own, boolean coached, List<Part> parts, List<ForecastsView.Pair> trainees) {
    static final List<String> LEVELS =
            Arrays.stream(CoachLevel.values()).map(Enum::name).toList();

    /** A step. */
    record Part(String title, List<Row> rows) {}

    /**
     * A requirement.
     *
     * @param shown null where nobody is coached
     * @param counted what it rests on
     * @param safety whether it is never silent
     */
    record Row(CoachText text, String title, @Nullable CoachLevel shown, String counted, boolean safety) {
        /** What may be chosen instead. */
        public List<Option> choices() {
            return Arrays.stream(CoachLevel.values())
                    .filter(level -> level != shown && !(safety && level == CoachLevel.SILENT))
                    .map(level -> new Option(level.name(), level.words()))
                    .toList();
        }
    }
}
