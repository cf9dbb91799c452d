package org.benchtrail.trail;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.lang.reflect.RecordComponent;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.TreeSet;
import java.util.random.RandomGenerator;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.benchtrail.core.integrity.HashChain;
import org.benchtrail.core.method.Channel;
import org.benchtrail.core.method.Entry;
import org.benchtrail.core.method.Fact;
import org.benchtrail.core.method.FactKinds;
import org.benchtrail.core.method.Origin;
import org.benchtrail.core.method.Role;
import org.benchtrail.core.method.Stamp;
import org.benchtrail.core.method.desk.Advanced;
import org.benchtrail.core.method.desk.DeskFact;
import org.benchtrail.core.method.desk.Waived;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What an entry is as bytes: these forms are in trails that exist, and are never changed. */
class EntryCodecTest {
    /** Renaming a kind would make stored trails unreadable. */
    private static final Set<String> KINDS = new TreeSet<>(Set.of(
            "loss-accepted",
            "addendum",
            "addendum-countersigned",
            "asked",
            "hand-over-offered",
            "lessening-agreed",
            "offer-withdrawn",
            "remarked",
            "sent-back",
            "soak-started",
            "action-planned",
            "action-settled",
            "advanced",
            "attachment-added",
            "bench-result-attached",
            "cancelled",
            "cause-named",
            "cautions-acknowledged",
            "changes-asked",
            "check-planned",
            "closed",
            "corrected",
            "data-answered",
            "effort-recorded",
            "escalated",
            "evidence-impossible",
            "extract-recorded",
            "finding-answered",
            "finding-recorded",
            "forecast-committed",
            "forecast-skipped",
            "function-checked",
            "handed-over",
            "hazards-screened",
            "held",
            "knowledge-linked",
            "likeness-checked",
            "logs-reviewed",
            "maker-consulted",
            "obvious-questioned",
            "onset-recorded",
            "opened",
            "part-fit-checked",
            "part-override-approved",
            "picture-marked",
            "plan-approved",
            "plan-declined",
            "presence-ended",
            "presence-signed",
            "prevention-considered",
            "reading-recorded",
            "refused",
            "reopened",
            "reproduction-tried",
            "requester-answered",
            "result-recorded",
            "resumed",
            "rethought",
            "returned",
            "ruled-out",
            "scope-recorded",
            "signed",
            "soak-run",
            "soak-time-reckoned",
            "stop-work-cleared",
            "summary-written",
            "symptom-recorded",
            "symptom-rechecked",
            "theories-ranked",
            "theory-chosen",
            "theory-stated",
            "verify-failed",
            "waived"));

    /** Of entries that have no words of which a commitment could be made. */
    private static final RandomGenerator NONE = () -> {
        throw new AssertionError("nothing is hidden");
    };

    private static final Origin FROM_PAGE = new Origin(Channel.PAGE, "r-1", "0123456789abcdef", null);

    static Stream<Fact> samples() {
        return Samples.all().stream();
    }

    private static String text(TrailEntry entry) {
        return new String(entry.canonical(), StandardCharsets.UTF_8);
    }

    @Test
    void kindNames_areThese() {
        Set<String> kinds = new TreeSet<>(FactKinds.all().keySet());
        Set<String> unnamed = new TreeSet<>(kinds);
        unnamed.removeAll(KINDS);
        assertEquals(Set.of(), unnamed, "stored under these names from now on: name them in KINDS");
        assertEquals(KINDS, kinds, "entries are stored under these names: a kind keeps its own for ever");
    }

    @Test
    void everyKind_hasASample_withEveryComponentFilled() throws ReflectiveOperationException {
        Set<String> sampled =
                samples().map(f -> FactKinds.name(f.getClass())).collect(Collectors.toCollection(TreeSet::new));
        assertEquals(KINDS, sampled);
        for (Class<? extends Fact> kind : FactKinds.all().values()) {
            Fact first = samples()
                    .filter(kind::isInstance)
                    .findFirst()
                    .orElseThrow(
                            () -> new AssertionError("no sample of " + kind.getSimpleName() + " in Samples.later()"));
            for (RecordComponent component : kind.getRecordComponents()) {
                assertNotNull(component.getAccessor().invoke(first), () -> kind + " " + component.getName());
            }
        }
    }

    @ParameterizedTest
    @MethodSource("samples")
    void entry_comesBackAsItWas(Fact fact) {
        Instant at = Instant.parse("2031-03-03T08:00:00.000001Z");
        Set<Role> roles = Set.of(Role.SUPERVISOR, Role.MENTOR);
        for (Stamp stamp : List.of(
                new Stamp(7, at, "ines", roles),
                new Stamp(7, at, "ines", roles, FROM_PAGE),
                new Stamp(7, at, Stamp.SERVER, Set.of(), FROM_PAGE.ofServerFor("ines")))) {
            TrailEntry stored = EntryCodec.encode(
                    "40718-6", new Entry(stamp, fact), HashChain.START, "salt", new SplittableRandom(1));
            EntryCodec.Decoded back = EntryCodec.decode(stored.canonical(), stored.words());
            assertEquals(
                    new EntryCodec.Decoded("40718-6", new Entry(stamp, fact), HashChain.START, back.salt(), false),
                    back);
            assertEquals(FactKinds.name(fact.getClass()), stored.kind());
            assertEquals(HashChain.START, stored.previous());
            assertArrayEquals(CanonicalJson.of(text(stored)), stored.canonical(), "the bytes are canonical");
            assertArrayEquals(
                    stored.canonical(),
                    EntryCodec.encode(
                                    back.ticket(), back.entry(), back.previous(), back.salt(), new SplittableRandom(1))
                            .canonical());
        }
    }

    @Test
    void fixedEntryOfFormat2_hasTheseBytesAndThisHash() {
        Stamp stamp = new Stamp(
                2, Instant.parse("2031-03-03T08:00:00Z"), Stamp.SERVER, Set.of(), FROM_PAGE.ofServerFor("ines"));
        TrailEntry stored = EntryCodec.encode(
                "40718-6", new Entry(stamp, new Advanced()), "1".repeat(64), "AAAAAAAAAAAAAAAAAAAAAA", NONE);
        assertEquals(
                "{\"actor\":\"server\",\"at\":\"2031-03-03T08:00:00.000000Z\",\"behalf\":\"ines\",\"channel\":\"SERVER\","
                        + "\"entry\":2,\"format\":2,\"payload\":{\"kind\":\"advanced\"},\"policy\":\"0123456789abcdef\","
                        + "\"previous\":\"1111111111111111111111111111111111111111111111111111111111111111\","
                        + "\"request\":\"r-1\",\"roles\":[],\"salt\":\"AAAAAAAAAAAAAAAAAAAAAA\",\"ticket\":\"40718-6\"}",
                text(stored));
        // printf '\0%s' '{"actor":...}' | sha256sum    with the text above between the quotes
        assertEquals("b3be9ce79d0ebe5ab153c62941b182f88f234e552387b761bf9fa185da8dce1f", stored.hash());
    }

    @Test
    void twoEntriesThatSayTheSame_differInSaltAndHash() {
        Stamp stamp = new Stamp(2, Instant.EPOCH, "ines", Set.of(), FROM_PAGE);
        Set<String> hashes = Stream.generate(
                        () -> EntryCodec.encode("40718-6", new Entry(stamp, new Advanced()), HashChain.START))
                .limit(3)
                .map(TrailEntry::hash)
                .collect(Collectors.toSet());
        assertEquals(3, hashes.size());
    }

    @Test
    void fixedEntry_hasTheseBytesAndThisHash() {
        TrailEntry stored = EntryCodec.encode(
                "40718-6",
                new Entry(
                        new Stamp(
                                1, Instant.parse("2031-03-03T08:00:00Z"), "ines", Set.of(Role.TECHNICIAN, Role.MENTOR)),
                        Samples.OPENED),
                HashChain.START);
        assertEquals(
                "{\"actor\":\"ines\",\"at\":\"2031-03-03T08:00:00.000000Z\",\"entry\":1,\"format\":1,"
                        + "\"payload\":{\"assignee\":\"ines\",\"assigneeRoles\":[\"TECHNICIAN\",\"MENTOR\"],\"category\":\"HEAT\",\"device\":\"Workstation by the window\",\"impact\":\"ONE_PERSON\",\"kind\":\"opened\","
                        + "\"place\":\"Drawing office, 2\u00bd floor\",\"requester\":17,\"ticket\":\"40718-6\",\"title\":\"Switches off after ten minutes\",\"urgency\":\"HINDERED\",\"words\":\"It just dies \u2013 \\\"again\\\"\"},"
                        + "\"previous\":\"0000000000000000000000000000000000000000000000000000000000000000\",\"roles\":[\"TECHNICIAN\",\"MENTOR\"],\"ticket\":\"40718-6\"}",
                text(stored));
        // printf '\0%s' '{"actor":...}' | sha256sum    with the text above between the quotes, in UTF-8
        assertEquals("82b7abaf900fe55ed4a190e08606468dac2a931155e156f14fcb7c3c50038de9", stored.hash());
    }

    @ParameterizedTest
    @CsvSource({
        "2031-03-03T08:00:00Z, 2031-03-03T08:00:00.000000Z",
        "2031-03-03T08:00:00.1Z, 2031-03-03T08:00:00.100000Z",
        "2031-03-03T08:00:00.000001Z, 2031-03-03T08:00:00.000001Z",
        "2031-03-03T08:00:00.999999Z, 2031-03-03T08:00:00.999999Z",
        "1999-12-31T23:59:59.5Z, 1999-12-31T23:59:59.500000Z"
    })
    void time_hasSixDigitsAlways(String at, String form) {
        Stamp stamp = new Stamp(1, Instant.parse(at), "ines", Set.of());
        TrailEntry stored = EntryCodec.encode("40718-6", new Entry(stamp, new Advanced()), HashChain.START);
        assertTrue(text(stored).contains("\"at\":\"" + form + "\""), text(stored));
        assertEquals(Instant.parse(at), stored.read().stamp().at());
    }

    /** As the first version of the server wrote them, one entry a line. */
    @Test
    void storedEntriesOfFormat1_stayReadable() throws IOException {
        List<String> lines;
        try (InputStream file = EntryCodecTest.class.getResourceAsStream("/trail/entries-format-1.txt")) {
            lines = new String(file.readAllBytes(), StandardCharsets.UTF_8)
                    .lines()
                    .toList();
        }
        List<TrailEntry> trail = new ArrayList<>();
        for (String line : lines) {
            byte[] canonical = line.getBytes(StandardCharsets.UTF_8);
            Entry entry = EntryCodec.decode(canonical, null).entry();
            Stamp stamp = entry.stamp();
            String kind = FactKinds.name(entry.fact().getClass());
            assertArrayEquals(
                    canonical,
                    EntryCodec.encode(
                                    "40718-6",
                                    entry,
                                    EntryCodec.decode(canonical, null).previous(),
                                    null,
                                    NONE)
                            .canonical());
            assertEquals("entry " + stamp.entry(), stamp.request(), "each a request of its own");
            trail.add(new TrailEntry(
                    stamp.entry(), stamp.at(), stamp.by(), kind, canonical, HashChain.hash(canonical), null));
        }
        Verification verification =
                new StoredTrail(trail, lines.size(), trail.get(trail.size() - 1).hash(), null).verify(Chains.TICKET);
        assertTrue(verification.holds(), verification::sentence);
        assertEquals(Samples.stored(), trail.stream().map(e -> e.read().fact()).toList());
        assertEquals(
                "7657e2150778d973ab9ea74da5338316fc4fa5c5e3e25080e7d85bc5c09ce245",
                trail.get(trail.size() - 1).hash());
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                "x",
                "null",
                "[]",
                "{}",
                "{\"format\":1}",
                "{\"format\":2,\"ticket\":\"40718-6\",\"entry\":1,\"at\":\"2031-03-03T08:00:00.000000Z\",\"actor\":\"a\",\"roles\":[],"
                        + "\"payload\":{\"kind\":\"advanced\"},\"previous\":\"0\"}",
                "{\"format\":99,\"ticket\":\"40718-6\",\"entry\":1,\"at\":\"2031-03-03T08:00:00.000000Z\",\"actor\":\"a\",\"roles\":[],"
                        + "\"payload\":{\"kind\":\"advanced\"},\"previous\":\"0\"}",
                "{\"format\":1,\"ticket\":\"40718-6\",\"entry\":1,\"at\":\"2031-03-03T08:00:00.000000Z\",\"actor\":\"a\",\"roles\":[],"
                        + "\"payload\":{\"kind\":\"advanced\"},\"previous\":\"0\",\"channel\":\"PAGE\",\"request\":\"r\",\"policy\":\"p\",\"salt\":\"s\"}",
                "{\"format\":1,\"ticket\":\"40718-6\",\"entry\":1,\"at\":\"2031-03-03T08:00:00.000000Z\",\"actor\":\"a\",\"roles\":[],"
                        + "\"payload\":{\"kind\":\"advanced\"},\"previous\":\"0\",\"behalf\":\"b\"}",
                "{\"format\":2,\"ticket\":\"40718-6\",\"entry\":1,\"at\":\"2031-03-03T08:00:00.000000Z\",\"actor\":\"a\",\"roles\":[],"
                        + "\"payload\":{\"kind\":\"advanced\"},\"previous\":\"0\",\"request\":\"r\",\"policy\":\"p\",\"salt\":\"s\"}",
                "{\"format\":2,\"ticket\":\"40718-6\",\"entry\":1,\"at\":\"2031-03-03T08:00:00.000000Z\",\"actor\":\"a\",\"roles\":[],"
                        + "\"payload\":{\"kind\":\"advanced\"},\"previous\":\"0\",\"channel\":\"PAGE\",\"policy\":\"p\",\"salt\":\"s\"}",
                "{\"format\":2,\"ticket\":\"40718-6\",\"entry\":1,\"at\":\"2031-03-03T08:00:00.000000Z\",\"actor\":\"a\",\"roles\":[],"
                        + "\"payload\":{\"kind\":\"advanced\"},\"previous\":\"0\",\"channel\":\"PAGE\",\"request\":\"r\",\"salt\":\"s\"}",
                "{\"format\":2,\"ticket\":\"40718-6\",\"entry\":1,\"at\":\"2031-03-03T08:00:00.000000Z\",\"actor\":\"a\",\"roles\":[],"
                        + "\"payload\":{\"kind\":\"advanced\"},\"previous\":\"0\",\"channel\":\"PAGE\",\"request\":\"r\",\"policy\":\"p\"}",
                "{\"format\":2,\"ticket\":\"40718-6\",\"entry\":1,\"at\":\"2031-03-03T08:00:00.000000Z\",\"actor\":\"a\",\"roles\":[],"
                        + "\"payload\":{\"kind\":\"advanced\"},\"previous\":\"0\",\"channel\":\"DOOR\",\"request\":\"r\",\"policy\":\"p\",\"salt\":\"s\"}",
                "{\"format\":2,\"ticket\":\"40718-6\",\"entry\":1,\"at\":\"2031-03-03T08:00:00.000000Z\",\"actor\":\"a\",\"roles\":[],"
                        + "\"payload\":{\"kind\":\"advanced\"},\"previous\":\"0\",\"channel\":\"PAGE\",\"request\":\"r\",\"policy\":\"p\",\"salt\":\"s\",\"behalf\":\"b\"}",
                "{\"format\":3,\"ticket\":\"40718-6\",\"entry\":1,\"at\":\"2031-03-03T08:00:00.000000Z\",\"actor\":\"a\",\"roles\":[],"
                        + "\"payload\":{\"kind\":\"advanced\"},\"previous\":\"0\"}",
                "{\"format\":1,\"ticket\":\"40718-6\",\"entry\":1,\"at\":\"today\",\"actor\":\"a\",\"roles\":[],"
                        + "\"payload\":{\"kind\":\"advanced\"},\"previous\":\"0\"}",
                "{\"format\":1,\"ticket\":\"40718-6\",\"entry\":1,\"actor\":\"a\",\"roles\":[],"
                        + "\"payload\":{\"kind\":\"advanced\"},\"previous\":\"0\"}",
                "{\"format\":1,\"ticket\":\"40718-6\",\"entry\":1,\"at\":\"2031-03-03T08:00:00.000000Z\",\"actor\":\"a\",\"roles\":[],"
                        + "\"payload\":{\"kind\":\"vanished\"},\"previous\":\"0\"}",
                "{\"format\":1,\"ticket\":\"40718-6\",\"entry\":1,\"at\":\"2031-03-03T08:00:00.000000Z\",\"actor\":\"a\",\"roles\":[],"
                        + "\"payload\":{\"kind\":\"advanced\",\"more\":1},\"previous\":\"0\"}",
                "{\"format\":1,\"ticket\":\"40718-6\",\"entry\":1,\"at\":\"2031-03-03T08:00:00.000000Z\",\"actor\":\"a\",\"roles\":[],"
                        + "\"payload\":null,\"previous\":\"0\"}",
                "{\"format\":1,\"ticket\":\"40718-6\",\"entry\":1,\"at\":\"2031-03-03T08:00:00.000000Z\",\"actor\":\"a\",\"roles\":[],"
                        + "\"payload\":{\"kind\":\"advanced\"}}",
                "{\"format\":1,\"entry\":1,\"at\":\"2031-03-03T08:00:00.000000Z\",\"actor\":\"a\",\"roles\":[],"
                        + "\"payload\":{\"kind\":\"advanced\"},\"previous\":\"0\"}"
            })
    void whatIsNoEntry_isRefused(String text) {
        byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
        assertThrows(IllegalArgumentException.class, () -> EntryCodec.decode(bytes, null));
    }

    /** The hash covers everything: two entries that differ in one part differ in their hash. */
    @Test
    void everyPartOfTheEnvelope_isHashed() {
        DeskFact waived = new Waived("reproduced", "No second device");
        Instant at = Instant.parse("2031-03-03T08:00:00Z");
        Stamp stamp = new Stamp(2, at, "ines", Set.of());
        Set<String> hashes = Stream.of(
                        EntryCodec.encode("40718-6", new Entry(stamp, waived), HashChain.START),
                        EntryCodec.encode("40719-4", new Entry(stamp, waived), HashChain.START),
                        EntryCodec.encode("40718-6", new Entry(stamp, waived), "1".repeat(64)),
                        EntryCodec.encode(
                                "40718-6", new Entry(new Stamp(3, at, "ines", Set.of()), waived), HashChain.START),
                        EntryCodec.encode(
                                "40718-6",
                                new Entry(new Stamp(2, at.plusNanos(1000), "ines", Set.of()), waived),
                                HashChain.START),
                        EntryCodec.encode(
                                "40718-6", new Entry(new Stamp(2, at, "ole", Set.of()), waived), HashChain.START),
                        EntryCodec.encode(
                                "40718-6",
                                new Entry(new Stamp(2, at, "ines", Set.of(Role.TRAINEE)), waived),
                                HashChain.START),
                        EntryCodec.encode("40718-6", new Entry(stamp, new Advanced()), HashChain.START),
                        ofFormat2(waived, FROM_PAGE, "salt"),
                        ofFormat2(waived, FROM_PAGE, "other"),
                        ofFormat2(waived, new Origin(Channel.API, "r-1", "0123456789abcdef", null), "salt"),
                        ofFormat2(waived, new Origin(Channel.PAGE, "r-2", "0123456789abcdef", null), "salt"),
                        ofFormat2(waived, new Origin(Channel.PAGE, "r-1", "fedcba9876543210", null), "salt"),
                        ofFormat2(waived, FROM_PAGE.ofServerFor("ines"), "salt"),
                        ofFormat2(waived, FROM_PAGE.ofServerFor("ole"), "salt"))
                .map(TrailEntry::hash)
                .collect(Collectors.toSet());
        assertEquals(15, hashes.size());
    }

    private static TrailEntry ofFormat2(Fact fact, Origin origin, String salt) {
        Stamp stamp = new Stamp(2, Instant.parse("2031-03-03T08:00:00Z"), "ines", Set.of(), origin);
        return EntryCodec.encode("40718-6", new Entry(stamp, fact), HashChain.START, salt, new SplittableRandom(1));
    }
}
