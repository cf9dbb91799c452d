package org.benchtrail.ticket.theorize;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import org.benchtrail.core.advice.Diagnosis;
import org.benchtrail.core.advice.ExpectedReading;
import org.benchtrail.core.advice.SheetEvidence;
import org.benchtrail.core.diagnosis.Action;
import org.benchtrail.core.diagnosis.Discrimination;
import org.benchtrail.core.diagnosis.Finding;
import org.benchtrail.core.diagnosis.Source;
import org.benchtrail.core.diagnosis.Words;
import org.benchtrail.core.method.Caution;
import org.benchtrail.core.method.EnumCopies;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.platform.Option;

/** A test that a diagnosis advises, in the words of a page. */
final class AdvisedTest {
    private final JobSheet sheet;
    private final Diagnosis diagnosis;

    AdvisedTest(JobSheet sheet, Diagnosis diagnosis) {
        this.sheet = sheet;
        this.diagnosis = diagnosis;
    }

    NextView.Test of(Action action) {
        OptionalLong saves = diagnosis.saves(action);
        Finding finding = finding(action.id());
        return view(finding, saves.isEmpty() ? "" : Long.toString(saves.getAsLong()), offer(finding));
    }

    NextView.Test of(Discrimination.Offer offer) {
        return view(finding(offer.finding()), "", Optional.of(offer));
    }

    /** What it would do to the active theory; empty without one of the catalogue. */
    private Optional<Discrimination.Offer> offer(Finding finding) {
        return sheet.activeTheory()
                .flatMap(t -> diagnosis.cause(t.fact().causeId()))
                .map(c -> new Discrimination(diagnosis.ranking(), c.id(), Source.SEEN.reliability()))
                .map(d -> d.of(finding.id(), finding.minutes()));
    }

    private Finding finding(String id) {
        return SheetEvidence.finding(diagnosis.model(), id).orElseThrow();
    }

    private NextView.Test view(Finding finding, String saves, Optional<Discrimination.Offer> offer) {
        Set<Caution> cautions =
                EnumCopies.union(Caution.class, Caution.against(finding), Caution.raisedBy(finding.act()));
        return new NextView.Test(
                finding.id(),
                finding.label(),
                finding.act(),
                finding.question(),
                Math.round(finding.minutes()),
                saves,
                finding.values().stream()
                        .map(v -> new Option(v, diagnosis.where().words(finding.id(), v)))
                        .toList(),
                finding.kind() == Finding.Kind.READING,
                finding.limits() == null ? "" : finding.limits().unit(),
                offer.map(o -> expectation(finding, o)).orElse(""),
                offer.flatMap(o -> ExpectedReading.of(finding, o.sign(), o.chance()))
                        .orElse(null),
                finding.invasive(),
                List.copyOf(cautions),
                "");
    }

    /** What would tell the theory from its rivals, and what it says if it is not seen. */
    private String expectation(Finding finding, Discrimination.Offer offer) {
        String sign = seen(finding, offer.sign()) + " (" + Words.chance(offer.chance()) + " if the theory is right)";
        if (!offer.tells()) {
            return sign + "; it says little of this theory either way.";
        }
        return sign + (offer.isCheck() ? otherwise(finding, offer) : "; not seeing it says little.");
    }

    /** The other outcome that speaks loudest against the theory. */
    private String otherwise(Finding finding, Discrimination.Offer offer) {
        return offer.weights().entrySet().stream()
                .filter(w -> !w.getKey().equals(offer.sign()))
                .min(Map.Entry.comparingByValue())
                .map(w -> "; if not: " + diagnosis.where().words(finding.id(), w.getKey()))
                .orElse("");
    }

    private String seen(Finding finding, String value) {
        return finding.label() + ": " + diagnosis.where().words(finding.id(), value);
    }
}
