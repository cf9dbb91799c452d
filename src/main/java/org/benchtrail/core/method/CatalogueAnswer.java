package org.benchtrail.core.method;

import java.util.Optional;
import org.benchtrail.core.diagnosis.Source;
import org.benchtrail.core.method.identify.ReadingRecorded;
import org.jspecify.annotations.Nullable;

/**
 * What a fact says about a finding of the cause catalogue: one of its values, or a reading that has yet to be judged.
 *
 * @param finding id in the catalogue
 * @param value one of the finding's values, or {@code unknown}; empty for a reading
 * @param source how it is known
 * @param reading null for a plain answer
 */
public record CatalogueAnswer(
        String finding,
        String value,
        Source source,
        @Nullable ReadingRecorded reading) {

    public static Optional<CatalogueAnswer> of(@Nullable String finding, @Nullable String value, Source source) {
        return finding == null || value == null
                ? Optional.empty()
                : Optional.of(new CatalogueAnswer(finding, value, source, null));
    }

    public static Optional<CatalogueAnswer> of(ReadingRecorded reading) {
        Source source = reading.accuracy() == null ? Source.SEEN : Source.CALIBRATED;
        return reading.finding() == null
                ? Optional.empty()
                : Optional.of(new CatalogueAnswer(reading.finding(), "", source, reading));
    }
}
