package org.benchtrail.ticket.identify;

import java.util.Comparator;
import java.util.List;
import org.benchtrail.core.measure.LimitLibrary;
import org.benchtrail.core.measure.Provenance;
import org.benchtrail.platform.Option;

/**
 * What a reading can be about, and be held against.
 *
 * @param questions of the causes that are answered by measuring; none without a catalogue
 * @param limits the site's own first
 */
public record ReadingChoices(List<Option> questions, List<Option> limits) {

    public static ReadingChoices of(List<Option> questions, LimitLibrary library) {
        List<Option> limits = library.rows().stream()
                .sorted(Comparator.comparing((LimitLibrary.Row row) -> row.provenance() != Provenance.GIVEN)
                        .thenComparing(LimitLibrary.Row::quantity))
                .map(ReadingChoices::limit)
                .toList();
        return new ReadingChoices(questions, limits);
    }

    private static Option limit(LimitLibrary.Row row) {
        String source = row.limit().source().replaceAll(",.*", "");
        String edition = row.edition().equals("-") ? "" : " " + row.edition();
        return new Option(row.id(), row.quantity() + ": " + row.limit().words() + " (" + source + edition + ")");
    }
}
