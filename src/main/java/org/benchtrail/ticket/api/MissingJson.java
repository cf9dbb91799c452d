package org.benchtrail.ticket.api;

import java.util.List;
import org.benchtrail.core.method.Missing;

/**
 * One thing that stands in the way of an act.
 *
 * @param code stable
 * @param anchor the place on the job sheet where it is met
 * @param waivable whether a supervisor may waive it
 */
public record MissingJson(String code, String sentence, String anchor, boolean waivable) {
    static List<MissingJson> all(List<Missing> missing) {
        return missing.stream()
                .map(m -> new MissingJson(m.code(), m.sentence(), m.anchor(), m.waivable()))
                .toList();
    }
}
