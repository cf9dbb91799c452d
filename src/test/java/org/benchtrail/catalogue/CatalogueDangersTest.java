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
import org.benchtrail.core.diagnosis.Risk;
import org.benchtrail.core.method.Caution;
import org.junit.jupiter.api.Test;

/** What the delivered catalogue names as dangerous carries its danger, so that its caution is raised whatever is ticked. */
class CatalogueDangersTest {
    /** What making a finding touches, and the cautions of which it then has to carry one, beside a risk. */
    private static final Map<Pattern, Set<Caution>> NAMED = Map.of(
            Pattern.compile(
                    "\\b(open it|open the (machine|cover|side|case|device)|[Pp]ull the plug|side open|strap on)"),
            Set.of(
                    Caution.MAINS,
                    Caution.STATIC,
                    Caution.CAPACITOR,
                    Caution.MOVING_PARTS,
                    Caution.HEAT,
                    Caution.BATTERY),
            Pattern.compile("into the outlet|outlet tester|black probe|\\bprobes?\\b|meter to DC"),
            Set.of(Caution.MAINS, Caution.LIVE, Caution.STATIC),
            Pattern.compile("(move|swap|connect|put) (the|a|this) (suspect )?(drive|member)"),
            Set.of(Caution.DATA_LOSS, Caution.STATIC),
            Pattern.compile("battery test|take the battery|battery out[ .]"),
            Set.of(Caution.BATTERY));

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
                Set<Caution> carried = finding.risk() == Risk.NONE ? Set.of() : Caution.against(finding);
                named += check(finding.id() + " " + finding.act(), carried, NAMED, bare);
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
                named += check(cause.repair().text(), cause.repair().dangers(), REPAIRS, bare);
            }
        }
        assertEquals(List.of(), bare);
        assertEquals(true, named >= 25, "only " + named + " repairs name a danger");
    }

    private static <D> int check(String text, Set<D> carried, Map<Pattern, Set<D>> table, List<String> bare) {
        int named = 0;
        for (Map.Entry<Pattern, Set<D>> row : table.entrySet()) {
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
