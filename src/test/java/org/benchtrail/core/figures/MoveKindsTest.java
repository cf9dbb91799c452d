package org.benchtrail.core.figures;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
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

    @Test
    void theStatementThatReadsMovesAsksForTheseKinds() throws IOException {
        try (InputStream file = Move.class.getResourceAsStream("/org/benchtrail/figures/FigureRows.sql")) {
            String text = new String(Objects.requireNonNull(file).readAllBytes(), StandardCharsets.UTF_8);
            Matcher asked = Pattern.compile("e\\.kind in \\(([^)]*)\\)").matcher(text);
            assertTrue(asked.find());
            assertEquals(
                    MoveKinds.kinds().collect(Collectors.toSet()),
                    Set.of(asked.group(1).replace("'", "").split(", ")));
            assertFalse(asked.find(), "asked for in one place");
        }
    }
}
