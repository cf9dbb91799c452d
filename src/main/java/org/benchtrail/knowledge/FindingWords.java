package org.benchtrail.knowledge;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.benchtrail.catalogue.CatalogueVersion;
import org.benchtrail.catalogue.Catalogues;
import org.benchtrail.core.advice.Heard;
import org.benchtrail.core.advice.SheetEvidence;
import org.benchtrail.core.advice.SheetReader;
import org.benchtrail.core.diagnosis.Finding;
import org.benchtrail.core.method.JobSheet;

/** Findings and causes in the words of the cause catalogue. */
@ApplicationScoped
class FindingWords {
    private final Catalogues catalogues;

    FindingWords(Catalogues catalogues) {
        this.catalogues = catalogues;
    }

    /** One {@code finding=value} as a question and its answer; as it is if the catalogue does not know it. */
    String one(String finding) {
        int sign = finding.lastIndexOf('=');
        String id = sign < 0 ? finding : finding.substring(0, sign);
        String value = sign < 0 ? "" : finding.substring(sign + 1);
        return questions().getOrDefault(id, id) + ": " + value;
    }

    String all(Collection<String> findings) {
        return findings.stream().map(this::one).collect(Collectors.joining("; "));
    }

    /** The version by which cases are compared. */
    CatalogueVersion inForce() {
        return catalogues.inForce();
    }

    /** What follows from a sheet's facts beside its answers: abnormal values only, since most devices share the normal ones. */
    static Map<String, String> heard(JobSheet sheet, CatalogueVersion version) {
        Map<String, String> heard = new TreeMap<>();
        version.model(sheet.opened().category().catalogue())
                .ifPresent(model -> SheetEvidence.heard(sheet, model.category(), SheetReader.PLAIN).stream()
                        .filter(h -> h.kind() != Heard.Kind.EXPLICIT
                                && !h.report().presumed()
                                && !h.report().value().equals(h.finding().usual()))
                        .forEach(h -> heard.put(h.finding().id(), h.report().value())));
        return heard;
    }

    /** Every id that a cause of the catalogue has or had before; itself if the catalogue does not know it. */
    Collection<String> names(String cause) {
        return catalogues.inForce().figures().values().stream()
                .flatMap(learned -> learned.category().cause(cause).stream())
                .findFirst()
                .<Collection<String>>map(
                        c -> Stream.concat(Stream.of(c.id()), c.was().stream()).toList())
                .orElse(List.of(cause));
    }

    private Map<String, String> questions() {
        return catalogues.inForce().figures().values().stream()
                .flatMap(learned -> learned.category().findings().stream())
                .collect(Collectors.toMap(Finding::id, f -> f.label().replaceAll("\\?$", ""), (a, b) -> a));
    }
}
