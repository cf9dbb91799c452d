package org.benchtrail.ticket.theorize;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.theorize.TheoryStated;
import org.jspecify.annotations.Nullable;

/**
 * What theories there are to choose from.
 *
 * @param causes of the catalogue that were not stated yet
 */
public record TheorizeView(List<TheoryView> theories, List<CauseChoice> causes) {
    private static final int SHOWN = 7;

    /** @param value by which the form names it */
    public record CauseChoice(String value, String name, String chance, boolean out) {}

    public static TheorizeView of(JobSheet sheet, @Nullable RankingView ranking) {
        Set<String> stated = sheet.all(TheoryStated.class).stream()
                .flatMap(t -> Optional.ofNullable(t.fact().causeId()).stream())
                .collect(Collectors.toSet());
        List<CauseChoice> causes = ranking == null
                ? List.of()
                : ranking.choices().stream()
                        .filter(c -> !stated.contains(c.id()))
                        .map(c -> new CauseChoice(TheorizeForm.CAUSE + c.id(), c.name(), c.chance(), c.out()))
                        .toList();
        return new TheorizeView(TheoryView.all(sheet), causes);
    }

    /** Those that are shown at once. */
    public List<CauseChoice> likely() {
        return causes.subList(0, Math.min(SHOWN, causes.size()));
    }

    public List<CauseChoice> further() {
        return causes.subList(Math.min(SHOWN, causes.size()), causes.size());
    }

    /** Whether that choice is one of them. */
    public boolean isFurther(String value) {
        return further().stream().anyMatch(c -> c.value().equals(value));
    }

    /** Whether a theory can only be written, not chosen. */
    public boolean isNothingToChoose() {
        return theories.isEmpty() && causes.isEmpty();
    }
}
