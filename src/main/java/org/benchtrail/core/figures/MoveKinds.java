package org.benchtrail.core.figures;

import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.benchtrail.core.method.FactKinds;
import org.benchtrail.core.method.Move;
import org.benchtrail.core.method.desk.Advanced;
import org.benchtrail.core.method.desk.Cancelled;
import org.benchtrail.core.method.desk.Closed;
import org.benchtrail.core.method.desk.Held;
import org.benchtrail.core.method.desk.MoveFact;
import org.benchtrail.core.method.desk.Reopened;
import org.benchtrail.core.method.desk.Resumed;
import org.benchtrail.core.method.desk.Rethought;
import org.benchtrail.core.method.desk.RuledOut;
import org.benchtrail.core.method.desk.VerifyFailed;

/** Which entries of a trail move the ticket, told by their kind alone, so that no entry need be read. */
public final class MoveKinds {
    private static final Map<Move, Class<? extends MoveFact>> FACTS = Map.of(
            Move.ADVANCE, Advanced.class,
            Move.REFUTE, RuledOut.class,
            Move.RETHINK, Rethought.class,
            Move.FAIL, VerifyFailed.class,
            Move.CLOSE, Closed.class,
            Move.CANCEL, Cancelled.class,
            Move.REOPEN, Reopened.class,
            Move.HOLD, Held.class,
            Move.RESUME, Resumed.class);

    private static final Map<String, Move> BY_KIND = FACTS.entrySet().stream()
            .collect(Collectors.toUnmodifiableMap(e -> FactKinds.name(e.getValue()), Map.Entry::getKey));

    private MoveKinds() {}

    /** The move that an entry of this kind records; empty for one that changes neither step, standing nor hold. */
    public static Optional<Move> move(String kind) {
        return Optional.ofNullable(BY_KIND.get(kind));
    }

    /** The kinds of entry that record one. */
    public static Stream<String> kinds() {
        return BY_KIND.keySet().stream();
    }
}
