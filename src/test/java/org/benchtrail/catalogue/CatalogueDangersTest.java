package org.benchtrail.catalogue;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;
import org.benchtrail.core.diagnosis.CauseCategory;
import org.benchtrail.core.diagnosis.Danger;
import org.junit.jupiter.api.Test;

/** What the delivered catalogue names as dangerous carries its danger, so that its caution is raised whatever is ticked. */
class CatalogueDangersTest {
    /** What a finding names, and the dangers of which it then has to carry one. */
    private static final Map<Pattern, Set<Danger>> NAMED = Map.of(
            Pattern.compile("outlet voltage|outlet tester|rail under load|module voltage"),
            Set.of(Danger.LIVE_MEASUREMENT),
            Pattern.compile("cord|other outlet|through a strip|another adapter|adapter output"),
            Set.of(Danger.MAINS, Danger.LIVE_MEASUREMENT),
            Pattern.compile(
                    "cover open|capacitors|heat sink|minimum parts|button pins|clock cell|supply alone|dust mat|module when|"
                            + "when swapped|with the slot|holds up the fan"),
            Set.of(Danger.OPENING),
            Pattern.compile("drive is moved|another drive$|replaced drive"),
            Set.of(Danger.DRIVE_MOVED));

    private static final Map<Pattern, Set<Danger>> REPAIRS = Map.of(
            Pattern.compile("replace supply|replace cord|wall outlet"),
            Set.of(Danger.MAINS),
            Pattern.compile("replace (the )?drive|replace members|copy, replace|spare"),
            Set.of(Danger.DRIVE_MOVED),
            Pattern.compile("replace (the )?(fan|module|board|card|cell|backplane|panel)|new paste|reseat"),
            Set.of(Danger.OPENING),
            Pattern.compile("batter"),
            Set.of(Danger.BATTERY, Danger.MAINS),
            Pattern.compile("fuser"),
            Set.of(Danger.HEAT),
            Pattern.compile("rollers"),
            Set.of(Danger.MOVING_PARTS),
            Pattern.compile("reinstall$|rebuild loader|repair install|clean or reinstall|restore$|move data"),
            Set.of(Danger.DATA, Danger.DRIVE_MOVED));

    private static List<CauseCategory> categories() throws IOException {
        try (InputStream in = CatalogueDangersTest.class.getResourceAsStream(CatalogueFile.DELIVERED)) {
            return CatalogueFile.read(new String(in.readAllBytes(), StandardCharsets.UTF_8))
                    .catalogue()
                    .orElseThrow()
                    .categories();
        }
    }

    @Test
    void noFindingThatNamesADanger_isWithoutIt() throws IOException {
        List<String> bare = new ArrayList<>();
        int named = 0;
        for (CauseCategory category : categories()) {
            for (var finding : category.findings()) {
                named += check(finding.id() + " " + finding.question(), finding.dangers(), NAMED, bare);
            }
        }
        assertEquals(List.of(), bare);
        assertEquals(true, named >= 20, "only " + named + " findings name a danger");
    }

    @Test
    void noRepairThatNamesADanger_isWithoutIt() throws IOException {
        List<String> bare = new ArrayList<>();
        int named = 0;
        for (CauseCategory category : categories()) {
            for (var cause : category.causes()) {
                named += check(
                        cause.id() + " " + cause.repair().text(), cause.repair().dangers(), REPAIRS, bare);
            }
        }
        assertEquals(List.of(), bare);
        assertEquals(true, named >= 25, "only " + named + " repairs name a danger");
    }

    private static int check(String text, Set<Danger> carried, Map<Pattern, Set<Danger>> table, List<String> bare) {
        int named = 0;
        for (Map.Entry<Pattern, Set<Danger>> row : table.entrySet()) {
            if (row.getKey().matcher(text).find()) {
                named++;
                if (row.getValue().stream().noneMatch(carried::contains)) {
                    bare.add(text + ": one of " + row.getValue());
                }
            }
        }
        return named;
    }
}
