package org.benchtrail.ticket;

import java.util.Collection;
import java.util.List;
import org.benchtrail.core.method.Category;
import org.benchtrail.core.method.JobSheet;
import org.jspecify.annotations.Nullable;

/** What the knowledge base can tell about a ticket that is being reported or worked. */
public interface KnownCauses {
    /**
     * A known cause.
     *
     * @param why it is shown: what it shares, how often and when it was found true
     */
    record Line(long id, String title, String why) {}

    /** A closed ticket and what its cause was. */
    record Solved(String number, String title, String device, String cause) {}

    /**
     * The known causes that fit best, the likest first; retired ones are left out.
     *
     * @param words as typed by anybody
     * @param category null for any
     * @param findings what was found so far, each as {@code finding=value}
     */
    List<Line> like(String words, @Nullable Category category, Collection<String> findings, int most);

    /** The known causes of an entry of the cause catalogue, the most confirmed first; retired ones are left out. */
    List<Line> ofCause(String causeId);

    /** The known causes that fit a ticket as far as its sheet tells: by its cause once that is named, its findings, its words. */
    List<Line> of(JobSheet sheet);

    /** Closed tickets that are most like these words, the likest first. */
    List<Solved> solved(String words, int most);
}
