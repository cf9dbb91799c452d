package org.benchtrail.core.diagnosis.path;

import java.util.List;
import org.benchtrail.core.diagnosis.Condition;

/**
 * What a file says of one test that is made from the structure, where the usual words do not fit.
 *
 * @param label a statement for lists and reasons; empty for the usual one
 * @param instruction what to do; empty for the usual one
 * @param unless not offered while a listed finding is known to have one of these values
 */
public record TestNote(String label, String instruction, List<Condition> unless) {
    static final TestNote NONE = new TestNote("", "", List.of());

    public TestNote {
        unless = List.copyOf(unless);
    }
}
