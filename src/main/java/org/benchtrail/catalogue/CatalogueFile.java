package org.benchtrail.catalogue;

import com.fasterxml.jackson.core.JsonLocation;
import com.fasterxml.jackson.core.JsonProcessingException;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.advice.Signs;
import org.benchtrail.core.diagnosis.Catalogue;
import org.benchtrail.core.diagnosis.CatalogueRules;
import org.benchtrail.core.diagnosis.CauseCategory;
import org.benchtrail.core.diagnosis.Feed;
import org.benchtrail.core.diagnosis.QuantityWords;
import org.benchtrail.core.diagnosis.path.PathCatalogue;
import org.benchtrail.core.measure.Dimension;
import org.benchtrail.core.measure.Units;
import org.benchtrail.platform.YamlNode;

/**
 * A catalogue as a YAML file (JSON is read as well). The keys are explained at the head of {@code
 * diagnosis/catalogue.yaml}. After a line of three dashes the paths may follow, see {@link PathsFile}. A file is taken whole or
 * not at all, and everything wrong with it is told at once.
 *
 * @param catalogue empty if there are faults
 * @param paths none if the file has none, or there are faults
 * @param faults by row
 */
public record CatalogueFile(Optional<Catalogue> catalogue, PathCatalogue paths, List<Fault> faults) {
    /** The catalogue that is delivered with the server. */
    public static final String DELIVERED = "/diagnosis/catalogue.yaml";

    /**
     * One mistake.
     *
     * @param row line in the file, from 1
     * @param field path of the entry, such as {@code categories[0].causes[3].weight}
     * @param reason a sentence that says what to do
     */
    public record Fault(int row, String field, String reason) {}

    private static final Pattern NEXT_PART = Pattern.compile("(?m)^---[ \\t]*\\r?\\n");

    public static CatalogueFile read(String yaml) {
        return read(yaml, FileFaults.Unknown.IS_A_FAULT);
    }

    /** One that was taken already, by this release or by a later one: what only that knows is passed over. */
    static CatalogueFile stored(String yaml) {
        return read(yaml, FileFaults.Unknown.IS_PASSED_OVER);
    }

    private static CatalogueFile read(String yaml, FileFaults.Unknown unknown) {
        Matcher dashes = NEXT_PART.matcher(yaml);
        if (!dashes.find() || dashes.start() == 0) {
            return causes(yaml, unknown);
        }
        CatalogueFile causes = causes(yaml.substring(0, dashes.start()), unknown);
        if (causes.catalogue().isEmpty()) {
            return causes;
        }
        int before = Math.toIntExact(yaml.substring(0, dashes.end()).lines().count());
        PathsFile places =
                PathsFile.read(yaml.substring(dashes.end()), causes.catalogue().get(), unknown);
        List<Fault> faults = places.faults().stream()
                .map(f -> new Fault(f.row() + before, f.field(), f.reason()))
                .toList();
        return places.paths()
                .map(found -> new CatalogueFile(causes.catalogue(), found, List.of()))
                .orElseGet(() -> refused(faults));
    }

    private static CatalogueFile causes(String yaml, FileFaults.Unknown unknown) {
        YamlNode root;
        try {
            root = YamlNode.parse(yaml);
        } catch (JsonProcessingException e) {
            return refused(
                    List.of(new Fault(row(e.getLocation()), "", "mend the YAML here: " + e.getOriginalMessage())));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        CatalogueEntries entries = new CatalogueEntries(unknown);
        List<CauseCategory> categories = entries.categories(root);
        List<Fault> faults = new ArrayList<>(entries.faults());
        for (Invalid.Problem p : CatalogueRules.problems(categories)) {
            if (!entries.isReported(p.field())) {
                faults.add(new Fault(entries.row(p.field()), p.field(), p.sentence()));
            }
        }
        for (int k = 0; k < categories.size(); k++) {
            signs(categories.get(k), "categories[" + k + "].feeds", entries, faults);
        }
        faults.sort(Comparator.comparingInt(Fault::row));
        return faults.isEmpty()
                ? new CatalogueFile(Optional.of(new Catalogue(categories)), PathCatalogue.NONE, List.of())
                : refused(faults);
    }

    /** Only what facts can say feeds a finding, and a number in a unit that its limits are in. */
    private static void signs(CauseCategory category, String at, CatalogueEntries entries, List<Fault> faults) {
        List<String> wrong = new ArrayList<>();
        for (Feed feed : category.hints().feeds()) {
            Optional<String> unit = Signs.unit(feed.sign());
            if (unit.isEmpty()) {
                wrong.add("name a sign that facts give: '" + feed.sign() + "' is none");
            } else if (unit.get().isEmpty() == feed.value().isEmpty()) {
                wrong.add(
                        (unit.get().isEmpty() ? "give a value for '" : "leave out the value of '") + feed.sign() + "'");
            } else if (!unit.get().isEmpty() && !agree(category, feed.finding(), unit.get())) {
                wrong.add("name a finding whose limits are in " + unit.get() + " for '" + feed.sign() + "'");
            }
        }
        for (QuantityWords words : category.hints().readings()) {
            if (!agree(category, words.finding(), words.unit())) {
                wrong.add("give the unit that the limits of '" + words.finding() + "' are in, not " + words.unit());
            }
        }
        wrong.forEach(reason -> faults.add(new Fault(entries.row(at), at, reason)));
    }

    private static boolean agree(CauseCategory category, String finding, String unit) {
        try {
            Dimension given = Units.read("unit", unit).dimension();
            return category.findings().stream()
                    .filter(f -> f.id().equals(finding))
                    .flatMap(f -> Stream.ofNullable(f.limits()))
                    .allMatch(l -> Units.read("unit", l.unit()).dimension() == given);
        } catch (Invalid e) {
            return false;
        }
    }

    /** @throws IllegalStateException if the delivered file is not acceptable: a broken build */
    public static Catalogue delivered() {
        CatalogueFile file = read(causesText());
        return file.catalogue().orElseThrow(() -> new IllegalStateException(DELIVERED + ": " + file.faults()));
    }

    /** The delivered causes with the delivered paths. */
    static String deliveredText() {
        return causesText() + "---\n" + PathsFile.deliveredText();
    }

    private static String causesText() {
        try (InputStream in = CatalogueFile.class.getResourceAsStream(DELIVERED)) {
            return new String(Objects.requireNonNull(in, DELIVERED).readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    static CatalogueFile refused(List<Fault> faults) {
        return new CatalogueFile(Optional.empty(), PathCatalogue.NONE, List.copyOf(faults));
    }

    private static int row(JsonLocation at) {
        return at == null ? 1 : Math.max(1, at.getLineNr());
    }
}
