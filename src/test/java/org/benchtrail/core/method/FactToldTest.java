package org.benchtrail.core.method;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.lang.reflect.RecordComponent;
import java.time.Instant;
import java.util.Set;
import java.util.stream.Stream;
import org.benchtrail.trail.Samples;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What a fact says in a line leaves out no words that somebody wrote, and shows nothing of how it is stored. */
class FactToldTest {
    /** Names that the catalogue, the bench or the server gave, and a file's own; the page of an entry shows them. */
    private static final Set<String> NOT_WORDS = Set.of(
            "ticket",
            "causeId",
            "finding",
            "recommended",
            "favoured",
            "calculation",
            "input",
            "mediaType",
            "sha256",
            "requirement",
            "guard",
            "answer",
            "against",
            "act",
            "commitment");

    /** Every moment is half past nine. */
    static final Telling PLAIN = new Telling() {
        @Override
        public String time(Instant at) {
            return "09:30";
        }

        @Override
        public String name(String account) {
            return "the person " + account;
        }
    };

    static Stream<Fact> samples() {
        return Samples.all().stream();
    }

    @ParameterizedTest
    @MethodSource("samples")
    void line_hasAllThatWasWritten_andNothingRaw(Fact fact) {
        String line = fact.told(PLAIN);
        for (RecordComponent component : fact.getClass().getRecordComponents()) {
            if (FactKinds.value(fact, component) instanceof String text && !NOT_WORDS.contains(component.getName())) {
                String words = text.endsWith(".") ? text.substring(0, text.length() - 1) : text;
                assertTrue(line.contains(words), () -> component.getName() + " '" + text + "' is not in: " + line);
            }
        }
        assertFalse(line.matches("(?s).*([A-Z]_[A-Z]|\\b(true|false|null)\\b|; ;|: ;|: :).*"), line);
        assertFalse(line.matches("(?s).*[:;,] ?"), line);
    }
}
