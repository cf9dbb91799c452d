package org.benchtrail.core.training;

import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** How much somebody wanted to be shown, in the order in which they said so: of one requirement, or of all of them. */
public record CoachChoices(List<Choice> all) {
    public CoachChoices {
        all = all.stream().sorted(Comparator.comparing(Choice::at)).toList();
    }

    /**
     * @param code of the requirement; empty for all
     * @param level null: left to the coach again
     */
    public record Choice(String code, @Nullable CoachLevel level, Instant at) {}

    /** What had been said last of a requirement at a moment; a requirement of safety is never silent. Empty if it is left to the coach. */
    public Optional<Choice> at(String code, Instant moment) {
        return all.stream()
                .filter(c -> !c.at().isAfter(moment))
                .filter(c -> c.code().isEmpty() || c.code().equals(code))
                .reduce((earlier, later) -> later)
                .flatMap(choice -> choice.level() == null
                        ? Optional.empty()
                        : Optional.of(new Choice(
                                code,
                                choice.level()
                                        .atLeast(WorkJudged.isOfSafety(code) ? CoachLevel.PROMPT : CoachLevel.SILENT),
                                choice.at())));
    }
}
