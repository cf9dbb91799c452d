package org.benchtrail.core.method.theorize;

import java.util.List;
import org.benchtrail.core.method.FreeText;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.Later;
import org.benchtrail.core.method.RecordPlace;
import org.benchtrail.core.method.Reference;
import org.benchtrail.core.method.ServerOnly;
import org.benchtrail.core.method.Telling;
import org.benchtrail.core.method.Told;
import org.benchtrail.core.text.FieldChecks;
import org.jspecify.annotations.Nullable;

/**
 * Theories in order of likelihood, best first, and on what basis: those stated, by entry number, or those of the catalogue.
 *
 * @param causes the causes of the catalogue as the server ranked them; null if a person gave the order
 * @param catalogue version of the catalogue that they were ranked with; null if a person gave the order
 * @param recommended finding of the test that was advised; null if none was, or a person gave the order
 * @param favoured cause that this test speaks for most; null where no test was advised
 */
public record TheoriesRanked(
        List<Integer> order,
        @FreeText String basis,

        @ServerOnly("The server ranks the causes of the catalogue: leave this out.") @Later @Nullable
        List<RankedCause> causes,

        @Later @Nullable Integer catalogue,

        @ServerOnly("The server names the test that it advised: leave this out.") @Later @Nullable
        String recommended,

        @ServerOnly("The server names the cause of the test that it advised: leave this out.") @Later @Nullable
        String favoured)
        implements TheorizeFact {
    /** So many causes stand in a line. */
    private static final int TOLD = 3;

    public TheoriesRanked {
        FieldChecks t = new FieldChecks();
        order = order == null ? List.of() : List.copyOf(order);
        causes = causes == null ? null : List.copyOf(causes);
        t.require(!order.isEmpty() || causes != null, "order", "Name the theories, the likeliest first.");
        basis = t.required("basis", basis, FieldChecks.LINE, "Say what the order rests on.");
        recommended = t.orNull("recommended", recommended, 80);
        favoured = t.orNull("favoured", favoured, 80);
        t.done();
    }

    /** A ranking of the server's without a test. */
    public TheoriesRanked(
            List<Integer> order, String basis, @Nullable List<RankedCause> causes, @Nullable Integer catalogue) {
        this(order, basis, causes, catalogue, null, null);
    }

    /** An order that a person gave. */
    public TheoriesRanked(List<Integer> order, String basis) {
        this(order, basis, null, null, null, null);
    }

    /** A ranking of the catalogue's causes; an order of theories is a person's. */
    @Override
    public boolean saidByServer() {
        return causes != null;
    }

    @Override
    public boolean tellsRanking() {
        return causes != null;
    }

    @Override
    public boolean lateAllowed() {
        return true;
    }

    @Override
    public List<Reference> references() {
        return order.stream()
                .map(theory -> new Reference(theory, TheoryStated.class, "order"))
                .toList();
    }

    @Override
    public RecordPlace placeIn(JobSheet sheet) {
        return RecordPlace.TRAIL;
    }

    @Override
    public String told(Telling reader) {
        return Told.all(
                order.isEmpty() ? "" : "entries " + Told.list(order, String::valueOf),
                causes == null ? "" : likeliest(causes),
                basis);
    }

    private static String likeliest(List<RankedCause> causes) {
        int shown = Math.min(TOLD, causes.size());
        int more = causes.size() - shown;
        return Told.list(causes.subList(0, shown), RankedCause::words) + (more == 0 ? "" : " and " + more + " more");
    }
}
