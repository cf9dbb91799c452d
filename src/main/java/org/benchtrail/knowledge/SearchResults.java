package org.benchtrail.knowledge;

import java.time.Instant;
import java.util.List;
import org.benchtrail.core.method.Category;
import org.benchtrail.core.method.document.Sureness;
import org.jspecify.annotations.Nullable;

/**
 * A page of what a search found.
 *
 * @param spelling words that were looked for in place of mistyped ones, such as "overheating"; empty if none were
 * @param loose whether nothing has every word, so that one of them was enough
 * @param causesTotal known causes that fit
 * @param casesTotal cases that fit, of those ranked
 * @param wholeCases whether that is all of them; otherwise the newest
 * @param more whether there is a further page
 */
public record SearchResults(
        List<CauseHit> causes,
        List<CaseHit> cases,
        String spelling,
        boolean loose,
        int causesTotal,
        int casesTotal,
        boolean wholeCases,
        int page,
        boolean more) {

    /** A known cause: how often and how lately it was found true, how many of that by measurement, what told it apart. */
    public record CauseHit(
            long id,
            Highlighted title,
            Category category,
            CauseState state,
            Highlighted shows,
            Highlighted apart,
            int confirmations,
            int measured,
            @Nullable Instant lastConfirmed,
            @Nullable String confirmedBy) {}

    /** A closed ticket. */
    public record CaseHit(
            String number,
            Highlighted title,
            String device,
            Category category,
            Highlighted cause,
            Sureness sureness,
            Highlighted passage,
            List<String> findings,
            Instant closed,
            @Nullable Integer minutes,
            @Nullable Long known) {}
}
