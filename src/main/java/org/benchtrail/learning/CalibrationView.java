package org.benchtrail.learning;

import java.util.List;
import org.benchtrail.core.diagnosis.Calibration;
import org.jspecify.annotations.Nullable;

/**
 * How well the probabilities that were shown held.
 *
 * @param category id; empty for all
 * @param accepted accepted cases, with or without a ranking shown
 * @param figures null if no accepted case had a ranking shown
 * @param beta exponent on all evidence that would have served these cases best; null if they are fewer than 50. A proposal
 */
public record CalibrationView(
        String category,
        int accepted,
        Calibration.@Nullable Figures figures,
        @Nullable Double beta,
        List<Integer> versions) {}
