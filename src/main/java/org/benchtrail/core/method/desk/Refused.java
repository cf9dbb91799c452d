package org.benchtrail.core.method.desk;

import java.util.List;

/** An act that was refused, and the codes of what was missing. */
public record Refused(String act, List<String> missing) implements DeskFact {
    public Refused {
        missing = missing == null ? List.of() : List.copyOf(missing);
    }
}
