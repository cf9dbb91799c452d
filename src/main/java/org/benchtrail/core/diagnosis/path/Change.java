package org.benchtrail.core.diagnosis.path;

import java.util.List;

/**
 * What a kind of change touches.
 *
 * @param kind as it is asked on the job sheet, such as {@code HARDWARE}
 * @param finding the listed finding that asks for it
 * @param touches ids of segments
 */
public record Change(String kind, String finding, List<String> touches) {
    public Change {
        touches = List.copyOf(touches);
    }
}
