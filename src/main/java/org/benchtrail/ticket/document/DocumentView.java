package org.benchtrail.ticket.document;

import java.util.List;
import org.benchtrail.core.method.Requirement;
import org.benchtrail.core.method.document.DocumentRequirement;
import org.benchtrail.platform.Option;
import org.benchtrail.ticket.KnownCauses;
import org.benchtrail.ticket.theorize.RankingView;
import org.jspecify.annotations.Nullable;

/**
 * What the last step asks for beside its fields.
 *
 * @param causes of the category by name; none without a catalogue
 * @param known causes that the ticket may confirm, the likest first
 * @param signed whether the summary stands signed
 */
public record DocumentView(List<Option> causes, List<KnownCauses.Line> known, boolean signed) {

    public static DocumentView of(
            @Nullable RankingView ranking, List<KnownCauses.Line> known, List<Requirement.Status> gate) {
        boolean signed = gate.stream()
                .anyMatch(s ->
                        s.requirement() == DocumentRequirement.SUMMARY_WRITTEN && s.state() == Requirement.State.MET);
        return new DocumentView(ranking == null ? List.of() : ranking.causeNames(), known, signed);
    }
}
