package org.benchtrail.core.training;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.benchtrail.core.bench.judging.Soak;
import org.benchtrail.core.method.Entry;
import org.benchtrail.core.method.JobSheet;

/**
 * A job that questions are made from.
 *
 * @param person whose part in it counts
 * @param sheet as it ended
 * @param soaks what soak times on the sheet were made from, by entry; without one that is made otherwise today
 * @param apart on practice, by what the fault that was true is told from the one it is taken for; empty on a ticket
 */
public record RecallJob(
        RecallItem.Source source,
        String person,
        JobSheet sheet,
        Map<Integer, Soak.Input> soaks,
        Optional<Apart> apart) {
    public RecallJob {
        soaks = Map.copyOf(soaks);
    }

    public RecallJob withoutCauses() {
        return new RecallJob(source, person, sheet, soaks, Optional.empty());
    }

    /**
     * Two faults and what tells them apart.
     *
     * @param report title of the job
     * @param fault what was wrong, in words
     * @param other for which it is taken, in words
     * @param told the act that tells most
     * @param others further acts, which tell less
     */
    public record Apart(String report, String fault, String other, ToldApart told, List<RecallItem.Choice> others) {
        public Apart {
            others = List.copyOf(others);
        }
    }

    List<Entry> entries() {
        return sheet.facts().stream().map(f -> new Entry(f.stamp(), f.fact())).toList();
    }
}
