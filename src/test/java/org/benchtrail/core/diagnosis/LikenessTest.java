package org.benchtrail.core.diagnosis;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.Set;
import org.benchtrail.core.Published;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class LikenessTest {
    /** The four texts on China of Manning, Raghavan, Schütze, Introduction to Information Retrieval, table 13.1, as sets of words. */
    private static final Likeness CHINA = Likeness.among(List.of(
            Set.of("chinese", "beijing"),
            Set.of("chinese", "shanghai"),
            Set.of("chinese", "macao"),
            Set.of("tokyo", "japan", "chinese")));

    /** scikit-learn's TfidfVectorizer(smooth_idf=True, norm=None) prints 1.91629073 for a word in 1 of these 4, 1 for one in all. */
    @Test
    void weight_isThatOfAGeneralPurposeLibrary() {
        Published.check("scikit-learn, TfidfVectorizer with smooth_idf", 1.91629073, CHINA.weight("macao"), 5e-9);
        Published.check("scikit-learn, TfidfVectorizer with smooth_idf", 1, CHINA.weight("chinese"), 0);
    }

    /** By hand: shared 'chinese' weighs 1; either has chinese 1, beijing and shanghai 1.91629073 each: 1 / 4.83258146. */
    @Test
    void likeness_isSharedWeightAgainstAllWeight() {
        assertEquals(1 / 4.83258146, CHINA.of(List.of("chinese", "beijing"), List.of("shanghai", "chinese")), 1e-9);
    }

    /** By hand: 'tokyo' shared of tokyo, japan: a half; 'chinese' of chinese, japan: 1 / 2.91629073. */
    @Test
    void aRareFindingShared_weighsMore() {
        assertEquals(0.5, CHINA.of(List.of("tokyo"), List.of("tokyo", "japan")), 1e-12);
        assertEquals(1 / 2.91629073, CHINA.of(List.of("chinese"), List.of("chinese", "japan")), 1e-9);
    }

    @Test
    void nothingKnown_isNotAlike() {
        assertEquals(0, CHINA.of(List.of(), List.of()));
        assertEquals(0, CHINA.of(List.of("tokyo"), List.of()));
        assertEquals(0, CHINA.of(List.of("tokyo"), List.of("macao")));
    }

    private static Likeness.Traits traits(String place, Set<String> segments, String... findings) {
        return new Likeness.Traits(Set.of(findings), segments, place);
    }

    /** By hand: a half of what they are is shared; the same part takes a quarter of the rest, the same place a tenth of that. */
    @Test
    void samePartAndPlace_takeAShareOfTheDifference() {
        Likeness.Traits half = traits("Attic", Set.of("cord"), "tokyo");
        assertEquals(0.5, CHINA.of(half, traits("Cellar", Set.of("outlet"), "tokyo", "japan")), 1e-12);
        assertEquals(0.625, CHINA.of(half, traits("Cellar", Set.of("cord", "outlet"), "tokyo", "japan")), 1e-12);
        assertEquals(0.55, CHINA.of(half, traits("Attic", Set.of(), "tokyo", "japan")), 1e-12);
        assertEquals(0.6625, CHINA.of(half, traits("Attic", Set.of("cord"), "tokyo", "japan")), 1e-12);
    }

    /** Where nothing that was found is shared, the same part is a little like, and the same place alone less than that. */
    @Test
    void partOrPlaceAlone_isLittle() {
        Likeness.Traits one = traits("Attic", Set.of("cord"), "tokyo");
        assertEquals(0.25, CHINA.of(one, traits("Cellar", Set.of("cord"), "macao")), 1e-12);
        assertEquals(0.1, CHINA.of(one, traits("Attic", Set.of("outlet"), "macao")), 1e-12);
    }

    /** Two places that nobody named are not the same one. */
    @Test
    void whatNobodyKnows_isNotShared() {
        assertEquals(0, CHINA.of(traits("", Set.of(), "tokyo"), traits("", Set.of(), "macao")), 1e-12);
        assertEquals(0, CHINA.of(traits(" ", Set.of()), traits(" ", Set.of())), 1e-12);
    }

    /** In a shop with one case or none, the same findings are still the same. */
    @Test
    void fewCases_areEnough() {
        assertEquals(1, Likeness.among(List.of()).of(List.of("a"), List.of("a", "a")));
        assertEquals(1, Likeness.among(List.of(List.of("a"))).of(List.of("a"), List.of("a")));
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5})
    void likeness_isSymmetricAndGrowsWithWhatIsShared(long seed) {
        Random random = new Random(seed);
        List<List<String>> cases = new ArrayList<>();
        for (int i = 0; i < 40; i++) {
            cases.add(some(random));
        }
        Likeness likeness = Likeness.among(cases);
        for (List<String> one : cases) {
            List<String> other = some(random);
            double alike = likeness.of(one, other);
            assertTrue(alike >= 0 && alike <= 1, () -> "seed " + seed + ": " + alike);
            assertEquals(alike, likeness.of(other, one), 1e-12, () -> "seed " + seed);
            Likeness.Traits here = somewhere(random, one);
            Likeness.Traits there = somewhere(random, other);
            double whole = likeness.of(here, there);
            assertTrue(whole >= alike - 1e-12 && whole <= 1, () -> "seed " + seed + ": " + whole);
            assertEquals(whole, likeness.of(there, here), 1e-12, () -> "seed " + seed);
            List<String> more = new ArrayList<>(other);
            more.addAll(one);
            assertTrue(likeness.of(one, more) >= alike - 1e-12, () -> "seed " + seed);
        }
    }

    private static Likeness.Traits somewhere(Random random, List<String> findings) {
        Set<String> segments = Set.copyOf(
                random.ints(random.nextInt(3), 0, 4).mapToObj(i -> "s" + i).toList());
        return new Likeness.Traits(Set.copyOf(findings), segments, random.nextBoolean() ? "" : "p" + random.nextInt(3));
    }

    private static List<String> some(Random random) {
        return random.ints(random.nextInt(6), 0, 12).mapToObj(i -> "f" + i).toList();
    }
}
