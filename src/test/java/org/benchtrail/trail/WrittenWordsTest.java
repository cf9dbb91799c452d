package org.benchtrail.trail;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.lang.reflect.ParameterizedType;
import java.lang.reflect.RecordComponent;
import java.lang.reflect.Type;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Base64;
import java.util.HexFormat;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.benchtrail.core.integrity.HashChain;
import org.benchtrail.core.method.Channel;
import org.benchtrail.core.method.Entry;
import org.benchtrail.core.method.Fact;
import org.benchtrail.core.method.FactKinds;
import org.benchtrail.core.method.FreeText;
import org.benchtrail.core.method.Origin;
import org.benchtrail.core.method.Stamp;
import org.benchtrail.core.method.desk.Corrected;
import org.benchtrail.core.method.document.SummaryWritten;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Words that somebody wrote into an entry: what is hashed holds commitments to them, and they can go. */
class WrittenWordsTest {
    private static final ObjectMapper JSON = new ObjectMapper();
    private static final Stamp STAMP = new Stamp(
            7,
            Instant.parse("2031-03-03T08:00:00Z"),
            "ines",
            Set.of(),
            new Origin(Channel.PAGE, "r-1", "0123456789abcdef", null));

    /** Text of an entry that names no person: accounts, codes, numbers, units, and the words of the catalogue. */
    private static final Set<String> CLEAR = Set.of(
            "Asked.requirement",
            "Addendum.requirement",
            "Cancelled.duplicateOf",
            "Escalated.to",
            "ForecastCommitted.commitment",
            "ForecastCommitted.finding",
            "ForecastSkipped.person",
            "HandOverOffered.to",
            "HandedOver.to",
            "Opened.ticket",
            "Opened.device",
            "Opened.place",
            "Opened.assignee",
            "PresenceSigned.trainee",
            "Refused.act",
            "Refused.missing",
            "Remarked.requirement",
            "Waived.requirement",
            "CauseNamed.causeId",
            "AttachmentAdded.mediaType",
            "AttachmentAdded.sha256",
            "AttachmentAdded.scaledFrom",
            "BenchResultAttached.calculation",
            "BenchResultAttached.title",
            "BenchResultAttached.input",
            "BenchResultAttached.verdict",
            "BenchResultAttached.reason",
            "BenchFigure.name",
            "BenchFigure.value",
            "BenchFigure.unit",
            "FindingAnswered.finding",
            "FindingAnswered.question",
            "FindingAnswered.value",
            "LikenessChecked.shown",
            "ReadingRecorded.quantity",
            "ReadingRecorded.value",
            "ReadingRecorded.unit",
            "ReadingRecorded.point",
            "ReadingRecorded.instrument",
            "ReadingRecorded.lower",
            "ReadingRecorded.upper",
            "ReadingRecorded.limitSource",
            "ReadingRecorded.accuracy",
            "ReadingRecorded.guard",
            "ReadingRecorded.finding",
            "SoakTimeReckoned.basis",
            "ActionPlanned.cost",
            "ActionPlanned.part",
            "CheckPlanned.finding",
            "ExpectedValue.lower",
            "ExpectedValue.upper",
            "ExpectedValue.unit",
            "ResultRecorded.answer",
            "TheoriesRanked.recommended",
            "TheoriesRanked.favoured",
            "RankedCause.causeId",
            "RankedCause.name",
            "RankedCause.probability",
            "TheoryStated.causeId",
            "FunctionChecked.answers");

    static Stream<Fact> samples() {
        return Samples.all().stream();
    }

    private static TrailEntry stored(Fact fact) {
        return EntryCodec.encode("40718-6", new Entry(STAMP, fact), HashChain.START);
    }

    private static String text(byte[] bytes) {
        return new String(bytes, StandardCharsets.UTF_8);
    }

    @Test
    void everyTextOfAFact_isSomebodysWords_orNamedAsClear() {
        Set<String> unnamed = new TreeSet<>();
        Set<Class<?>> seen = new java.util.HashSet<>();
        FactKinds.all().values().forEach(kind -> collect(kind, seen, unnamed));
        Set<String> gone = new TreeSet<>(CLEAR);
        gone.removeAll(unnamed);
        unnamed.removeAll(CLEAR);
        assertEquals(Set.of(), unnamed, "mark it with @FreeText, or name it in CLEAR if nobody's name can stand in it");
        assertEquals(Set.of(), gone, "in CLEAR, and no clear text of a fact");
    }

    private static void collect(Class<?> record, Set<Class<?>> seen, Set<String> clear) {
        if (!record.isRecord() || !seen.add(record)) {
            return;
        }
        for (RecordComponent component : record.getRecordComponents()) {
            for (Class<?> part : parts(component.getGenericType())) {
                if (part == String.class && !component.isAnnotationPresent(FreeText.class)) {
                    clear.add(record.getSimpleName() + "." + component.getName());
                }
                collect(part, seen, clear);
            }
        }
    }

    private static List<Class<?>> parts(Type type) {
        List<Class<?>> parts = new ArrayList<>();
        if (type instanceof Class<?> one) {
            parts.add(one);
        } else if (type instanceof ParameterizedType many) {
            for (Type argument : many.getActualTypeArguments()) {
                parts.addAll(parts(argument));
            }
        }
        return parts;
    }

    @ParameterizedTest
    @MethodSource("samples")
    void words_areNotInWhatIsHashed_andEverythingElseIs(Fact fact) {
        TrailEntry entry = stored(fact);
        for (SaltedWords words : entry.saltedWords().values()) {
            assertFalse(text(entry.canonical()).contains("\"" + words.value() + "\""), words.value());
        }
        assertEquals(fact, entry.read().fact());
        assertFalse(entry.lacksWords());
    }

    /** Every fact takes the mark in place of its words, so that an entry that was erased is still one. */
    @ParameterizedTest
    @MethodSource("samples")
    void erasedEntry_isStillOne(Fact fact) {
        TrailEntry entry = stored(fact);
        TrailEntry erased = entry.with(null);
        assertEquals(entry.words() != null, erased.lacksWords());
        assertEquals(fact.getClass(), erased.read().fact().getClass());
        assertEquals(entry.read().stamp(), erased.read().stamp());
        if (entry.words() != null) {
            assertTrue(erased.read().fact().toString().contains(FreeText.ERASED), erased.read()::toString);
        }
    }

    /** By SHA-256 of the JDK over the bytes that the specification names, and nothing of our own. */
    @Test
    void commitment_isTheHashThatTheSpecificationNames() throws Exception {
        TrailEntry entry = stored(new SummaryWritten("Dust", "Cleaned", "Runs"));
        JsonNode words = JSON.readTree(entry.words());
        for (String part : List.of("findings", "actions", "outcome")) {
            JsonNode word = words.path("/" + part);
            MessageDigest sha = MessageDigest.getInstance("SHA-256");
            sha.update((byte) 2);
            sha.update(Base64.getUrlDecoder().decode(word.path("salt").asText()));
            sha.update(("summary-written/" + part).getBytes(StandardCharsets.US_ASCII));
            sha.update((byte) 0);
            sha.update(word.path("value").asText().getBytes(StandardCharsets.UTF_8));
            assertEquals(
                    HexFormat.of().formatHex(sha.digest()),
                    JSON.readTree(entry.canonical())
                            .at("/payload/" + part + "/committed")
                            .asText());
            assertEquals(32, Base64.getUrlDecoder().decode(word.path("salt").asText()).length);
        }
    }

    @Test
    void wordsOfACorrection_areHiddenInWhatItPutsInPlace() throws IOException {
        TrailEntry entry = stored(new Corrected(3, "A slip", new SummaryWritten("Dust", "Cleaned", "Runs")));
        assertEquals(
                Set.of("/reason", "/replacement/actions", "/replacement/findings", "/replacement/outcome"),
                Set.copyOf(fields(JSON.readTree(entry.words()))));
    }

    private static List<String> fields(JsonNode node) {
        List<String> names = new ArrayList<>();
        node.fieldNames().forEachRemaining(names::add);
        return names;
    }

    /** Whatever byte of the words is turned: they are not taken for those that were written. */
    @Test
    void anyByteTurned_isSeen() {
        TrailEntry entry = stored(new SummaryWritten("Dust", "Cleaned", "Runs"));
        byte[] words = entry.words();
        assertNotNull(words);
        for (int i = 0; i < words.length; i++) {
            for (int bit = 0; bit < 8; bit++) {
                byte[] turned = words.clone();
                turned[i] ^= (byte) (1 << bit);
                assertTrue(entry.with(turned).hasOtherWords(), i + " " + bit);
            }
        }
    }

    @Test
    void wordsOfAnother_orInAnotherPlace_areRefused() {
        TrailEntry one = stored(new SummaryWritten("Dust", "Cleaned", "Runs"));
        TrailEntry other = stored(new SummaryWritten("Dust", "Cleaned", "Runs"));
        assertTrue(one.with(other.words()).hasOtherWords(), "the same words with other salts");
        String swapped = text(one.words())
                .replace("/actions", "/x")
                .replace("/outcome", "/actions")
                .replace("/x", "/outcome");
        assertTrue(one.with(swapped.getBytes(StandardCharsets.UTF_8)).hasOtherWords());
        assertThrows(IllegalArgumentException.class, one.with("{}".getBytes(StandardCharsets.UTF_8))::read);
    }

    /** An entry of an earlier release has no commitments: words beside it are none of its. */
    @Test
    void wordsBesideAnEntryThatHasThemInside_areRefused() {
        TrailEntry entry = EntryCodec.encode(
                "40718-6", new Entry(Chains.stamp(3), new SummaryWritten("Dust", "Cleaned", "Runs")), HashChain.START);
        assertEquals(null, entry.words());
        assertFalse(entry.lacksWords());
        assertTrue(
                entry.with(stored(new SummaryWritten("Dust", "Cleaned", "Runs")).words())
                        .hasOtherWords());
    }
}
