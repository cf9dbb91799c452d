package org.benchtrail.core.figures;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.benchtrail.core.method.FactKinds;
import org.benchtrail.core.method.Move;
import org.benchtrail.core.method.desk.Advanced;
import org.benchtrail.core.method.desk.Cancelled;
import org.benchtrail.core.method.desk.Closed;
import org.benchtrail.core.method.desk.Escalated;
import org.benchtrail.core.method.desk.HandOverOffered;
import org.benchtrail.core.method.desk.HandedOver;
import org.benchtrail.core.method.desk.Held;
import org.benchtrail.core.method.desk.MoveFact;
import org.benchtrail.core.method.desk.OfferWithdrawn;
import org.benchtrail.core.method.desk.Reopened;
import org.benchtrail.core.method.desk.Resumed;
import org.benchtrail.core.method.desk.Rethought;
import org.benchtrail.core.method.desk.Returned;
import org.benchtrail.core.method.desk.RuledOut;
import org.benchtrail.core.method.desk.VerifyFailed;
import org.benchtrail.core.method.desk.WaitingFor;
import org.junit.jupiter.api.Test;

class MoveKindsTest {
    private static final Set<Move> ONLY_HANDS =
            Set.of(Move.HAND_OVER, Move.OFFER, Move.END_OFFER, Move.ESCALATE, Move.RETURN);

    private static final List<MoveFact> ONE_OF_EACH = List.of(
            new Advanced(),
            new Cancelled("set up elsewhere", null),
            new Closed(),
            new Escalated("the maker", "all of it"),
            new HandOverOffered("ines", "shift ends"),
            new HandedOver("ines", Set.of(), "shift ends"),
            new Held(WaitingFor.PART, Instant.parse("2026-03-02T08:00:00Z"), "a fan"),
            new OfferWithdrawn("not needed"),
            new Reopened("it is back"),
            new Resumed(),
            new Rethought("the strip is fine", true),
            new Returned("nothing found"),
            new RuledOut(),
            new VerifyFailed("it persists", true));

    @Test
    void everyKindTellsTheMoveThatItsFactMakes() {
        assertEquals(
                Set.of(MoveFact.class.getPermittedSubclasses()),
                ONE_OF_EACH.stream().map(MoveFact::getClass).collect(Collectors.toSet()));
        for (MoveFact fact : ONE_OF_EACH) {
            Optional<Move> told = Optional.of(fact.move()).filter(m -> !ONLY_HANDS.contains(m));
            assertEquals(told, MoveKinds.move(FactKinds.name(fact.getClass())), fact.toString());
        }
    }
}
