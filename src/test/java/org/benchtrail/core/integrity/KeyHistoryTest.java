package org.benchtrail.core.integrity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;

import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.benchtrail.core.integrity.KeyHistory.Told;
import org.junit.jupiter.api.Test;

/** Whoever owns the database writes any record of a key; what counts is who signed for it. */
class KeyHistoryTest {
    private static final String ORIGIN = "trail.shop.example/log";
    private static final SigningKey FIRST = new SigningKey(ORIGIN, VerifierKey.LOG, Keys.TEST_1);
    private static final SigningKey SECOND = new SigningKey(ORIGIN, VerifierKey.LOG, Keys.TEST_2);
    private static final SigningKey STRANGER = new SigningKey(ORIGIN, VerifierKey.LOG, Keys.TEST_3);

    private static String name(SigningKey key) {
        return key.verifier().toString();
    }

    private static Told made() {
        return new Told("made", name(FIRST), ORIGIN, "", 0L);
    }

    private static Told added(SigningKey key, SigningKey voucher) {
        return new Told(
                "added",
                name(key),
                "",
                voucher.sign(KeyHistory.vouched(name(key))).toString(),
                7L);
    }

    private static Told retired(SigningKey key) {
        return new Told("retired", name(key), "", "", 20L);
    }

    private static void assertKeys(Set<SigningKey> good, List<Integer> strangers, Told... records) {
        KeyHistory history = KeyHistory.of(List.of(records));
        assertEquals(good.stream().map(KeyHistoryTest::name).collect(Collectors.toSet()), history.good());
        assertEquals(strangers, history.strangers());
        assertEquals(ORIGIN, history.origin());
    }

    @Test
    void beforeTheFirst_thereIsNone() {
        KeyHistory none = KeyHistory.of(List.of());
        assertNull(none.origin());
        assertEquals(Set.of(), none.good());
    }

    @Test
    void rotation_firstBoth_thenTheNewOne_andTheOldOneStaysNamed() {
        assertKeys(Set.of(FIRST), List.of(), made());
        assertKeys(Set.of(FIRST, SECOND), List.of(), made(), added(SECOND, FIRST));
        assertKeys(Set.of(SECOND), List.of(), made(), added(SECOND, FIRST), retired(FIRST));
        KeyHistory after = KeyHistory.of(List.of(made(), added(SECOND, FIRST), retired(FIRST)));
        assertEquals(2, after.signing(20).size(), "what it signed before holds");
        assertEquals(
                List.of(SECOND.verifier()), after.signing(21), "a head that holds the leaf by which it was retired");
    }

    @Test
    void keyThatNobodySignedFor_counts_nowhere() {
        List<Told> ways = List.of(
                added(STRANGER, STRANGER),
                added(STRANGER, SECOND),
                new Told("added", name(STRANGER), "", "", 7L),
                new Told("added", name(STRANGER), "", "no line", 7L),
                new Told("made", name(STRANGER), ORIGIN, "", 7L),
                new Told("added", name(STRANGER), "", added(SECOND, FIRST).signature(), 7L));
        for (Told way : ways) {
            assertKeys(Set.of(FIRST), List.of(1), made(), way);
            assertEquals(
                    List.of(FIRST.verifier()),
                    KeyHistory.of(List.of(made(), way)).signing(1));
        }
    }

    @Test
    void retiredKey_signsForNobody_norDoesAStranger() {
        assertKeys(Set.of(SECOND), List.of(3), made(), added(SECOND, FIRST), retired(FIRST), added(STRANGER, FIRST));
        SigningKey other = new SigningKey("other.example/log", VerifierKey.LOG, Keys.TEST_2);
        assertKeys(Set.of(FIRST), List.of(1, 2), made(), added(STRANGER, STRANGER), added(other, STRANGER));
    }

    /** The name of the log is that of its first record, whatever comes after. */
    @Test
    void origin_isNotGivenAnew() {
        Told other = new Told("made", name(STRANGER), "other.example/log", "", 7L);
        assertEquals(ORIGIN, KeyHistory.of(List.of(made(), other)).origin());
        assertKeys(Set.of(FIRST), List.of(), new Told("retired", name(FIRST), ORIGIN, "", 7L));
    }

    /** Two servers whose settings differ for a while: one retires what the other signs with still. */
    @Test
    void keyThatIsTakenInAgain_signsAgain() {
        KeyHistory again = KeyHistory.of(List.of(made(), added(SECOND, FIRST), retired(FIRST), added(FIRST, SECOND)));
        assertEquals(2, again.signing(1000).size());
    }

    @Test
    void retirementThatIsNotSealedYet_endsNothing_andWhatIsNoKeyIsNone() {
        Told open = new Told("retired", name(FIRST), "", "", null);
        assertEquals(
                2,
                KeyHistory.of(List.of(made(), added(SECOND, FIRST), open))
                        .signing(1000)
                        .size());
        assertEquals(
                List.of(),
                KeyHistory.of(List.of(new Told("made", "altered", ORIGIN, "", 0L)))
                        .signing(1));
    }
}
