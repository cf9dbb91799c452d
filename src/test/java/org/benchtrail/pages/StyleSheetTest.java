package org.benchtrail.pages;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeSet;
import java.util.function.BiConsumer;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** How the style sheets are written: their layers and lines, sizes from tokens, no class without a use or without a rule. */
class StyleSheetTest {
    private static final SortedMap<String, String> SHEETS = Sources.styleSheets();
    private static final String TOKENS = "tokens.css";

    private static final Pattern LINK = Pattern.compile("href=\"/css/([^\"]+)\"");
    private static final Pattern DECLARATION = Pattern.compile("([a-z-]+|--[a-z0-9-]+): ([^;{}]+);");
    private static final Pattern OPENING = Pattern.compile("[^;{}]+ \\{");
    private static final Pattern NEXT_SELECTOR = Pattern.compile("[^;{}]+,");
    private static final Pattern USED_TOKEN = Pattern.compile("var\\((--[a-z0-9-]+)\\)");
    private static final Pattern CLASS = Pattern.compile("\\.([A-Za-z][\\w-]*)");
    private static final Pattern CLASS_ATTRIBUTE = Pattern.compile("class=\\\\?\"((?:\\{[^}]*}|[^\"])*?)\\\\?\"");
    private static final Pattern CLASS_OF_TAG = Pattern.compile("class='([^']+)'");
    private static final Pattern CLASS_BY_SCRIPT = Pattern.compile("className = \"([^\"]+)\"");

    private static final Pattern SPACED = Pattern.compile("(margin|padding)(-[a-z]+)*|([a-z]+-)?gap");
    private static final Pattern SPACE =
            Pattern.compile("0|auto|var\\(--space-[1-6]\\)|calc\\(.*var\\(--(space-[1-6]|box)\\).*\\)");
    private static final Pattern BLANK_OUTSIDE_BRACKETS =
            Pattern.compile(" (?![^(]*\\))(?![^(]*\\([^()]*\\)[^()]*\\))");
    private static final Pattern SIZE = Pattern.compile("inherit|var\\(--size-[a-z]+\\)");
    private static final Pattern FONT =
            Pattern.compile("inherit|var\\(--size-[a-z]+\\) / var\\(--leading[a-z-]*\\) .*");
    private static final Pattern COLOUR =
            Pattern.compile("#[0-9a-f]{3,8}\\b|\\b(rgb|hsl|hwb|lab|lch|oklab|oklch)a?\\(");
    private static final Pattern WIDTH_OF_SCREEN = Pattern.compile("@media \\(width (?:<|>=) ([0-9.a-z]+)\\) \\{");

    /** From here down one column, from here down a phone; a custom property cannot stand in a media query. */
    private static final Set<String> WIDTHS_OF_SCREENS = Set.of("62rem", "60rem", "46rem");

    /** Classes that a view gives to a template, with what gives them. */
    private static final Map<String, List<String>> FROM_VIEWS = Map.of(
            "a row of the route card",
            List.of("signed", "now", "later"),
            "the level of a result of the bench",
            List.of("good", "bad", "careful", "undecided"),
            "the verdict of a reading",
            List.of("within", "outside", "not-judged"),
            "the lines of a drawing",
            List.of(
                    "axis", "line", "line0", "line1", "line2", "line3", "limit", "band", "ideal", "edge", "filled",
                    "heavy"),
            "the two layers of marks on a picture",
            List.of("below", "ink"));

    /** Classes that carry no rule of their own, with what they are for. */
    private static final Map<String, String> WITHOUT_RULE = Map.of(
            "grid", "the script finds questions by it",
            "pick", "a group of choices under one legend",
            "causes", "the ranked causes",
            "next", "the next best test",
            "sign", "the mark of a requirement");

    @Test
    void links_nameEveryStyleSheetInTheOrderOfTheLayers() {
        List<String> linked = all(LINK, Sources.templates().get("styles.html"));
        assertEquals(SHEETS.keySet(), new TreeSet<>(linked));
        assertEquals(SHEETS.size(), linked.size());
        List<String> order = layers();
        List<Integer> places = linked.stream()
                .skip(1)
                .map(s -> order.indexOf(layer(SHEETS.get(s))))
                .toList();
        assertEquals("layers.css", linked.get(0));
        assertEquals(places.stream().sorted().toList(), places);
    }

    @Test
    void everyStyleSheet_standsInOneLayerAndSaysWhatItIsFor() {
        List<String> others = SHEETS.entrySet().stream()
                .filter(e -> !e.getKey().equals("layers.css"))
                .filter(e -> !layers().contains(layer(e.getValue()))
                        || !e.getValue().matches("(?s)/\\* [A-Z][^*]+\\. \\*/\n@layer [a-z]+ \\{\n.*\n}\n"))
                .map(Map.Entry::getKey)
                .toList();
        assertEquals(List.of(), others);
    }

    @Test
    void everyLine_holdsOneThingAndIsIndentedByTwo() {
        List<String> faults = new ArrayList<>();
        SHEETS.forEach((name, text) -> {
            int depth = 0;
            String before = "{";
            int number = 0;
            for (String line : text.split("\n", -1)) {
                number++;
                String content = line.strip();
                if (content.equals("}")) {
                    depth--;
                }
                boolean known = content.isEmpty()
                        || content.equals("}")
                        || content.matches("/\\* .* \\*/|@layer [a-z, ]+;")
                        || Stream.of(DECLARATION, OPENING, NEXT_SELECTOR)
                                .anyMatch(p -> p.matcher(content).matches());
                boolean indented = content.isEmpty() ? line.isEmpty() : line.equals(" ".repeat(2 * depth) + content);
                if (!known || !indented || crowded(before, content)) {
                    faults.add(name + " " + number + ": " + line);
                }
                if (content.endsWith("{")) {
                    depth++;
                }
                before = content;
            }
            if (depth != 0) {
                faults.add(name + ": a bracket is left open");
            }
        });
        assertEquals(List.of(), faults);
    }

    /** Rules are parted by one blank line, and none stands within a bracket's edge. */
    private static boolean crowded(String before, String line) {
        boolean opens = line.endsWith("{") || line.endsWith(",");
        boolean afterRule = before.equals("}") || before.endsWith(";");
        return (line.isEmpty() && (before.isEmpty() || before.endsWith("{")))
                || (line.equals("}") && before.isEmpty())
                || (opens && afterRule);
    }

    @Test
    void sizesSpacesAndColours_areTokens() {
        List<String> faults = new ArrayList<>();
        declarations((name, d) -> {
            String property = d.group(1);
            String value = d.group(2);
            boolean good = true;
            if (SPACED.matcher(property).matches()) {
                good = BLANK_OUTSIDE_BRACKETS
                        .splitAsStream(value)
                        .allMatch(v -> SPACE.matcher(v).matches());
            } else if (property.equals("font-size")) {
                good = SIZE.matcher(value).matches();
            } else if (property.equals("font")) {
                good = FONT.matcher(value).matches();
            }
            if (!good || (!property.startsWith("--") && COLOUR.matcher(value).find())) {
                faults.add(name + ": " + d.group());
            }
        });
        assertEquals(List.of(), faults);
    }

    @Test
    void tokens_areAllDefinedOnceAndUsed() {
        Set<String> used = new TreeSet<>();
        SHEETS.values().forEach(text -> used.addAll(all(USED_TOKEN, text)));
        assertEquals(new TreeSet<>(all(Pattern.compile("(--[a-z0-9-]+): "), SHEETS.get(TOKENS))), used);
    }

    @Test
    void screens_haveFewWidths() {
        Set<String> widths = new TreeSet<>();
        SHEETS.values()
                .forEach(text -> text.lines()
                        .filter(l -> l.contains("width") && l.contains("@media"))
                        .forEach(l -> widths.addAll(all(WIDTH_OF_SCREEN, l))));
        assertEquals(new TreeSet<>(WIDTHS_OF_SCREENS), widths);
    }

    @Test
    void everyClass_isUsedAndHasARule() {
        Set<String> defined = new TreeSet<>();
        SHEETS.values()
                .forEach(text -> text.lines()
                        .map(String::strip)
                        .filter(l -> l.endsWith("{") || l.endsWith(","))
                        .forEach(l -> defined.addAll(all(CLASS, l))));
        Set<String> used = new TreeSet<>();
        Sources.templates().values().forEach(text -> {
            used.addAll(classes(text));
            used.addAll(all(CLASS_OF_TAG, text));
        });
        Sources.programs().values().forEach(text -> used.addAll(classes(text)));
        Sources.scripts().values().forEach(text -> used.addAll(all(CLASS_BY_SCRIPT, text)));

        Set<String> withoutRule = new TreeSet<>(used);
        withoutRule.removeAll(defined);
        withoutRule.removeAll(WITHOUT_RULE.keySet());
        assertEquals(Set.of(), withoutRule, "classes without a rule");

        Set<String> withoutUse = new TreeSet<>(defined);
        withoutUse.removeAll(used);
        FROM_VIEWS.values().forEach(withoutUse::removeAll);
        assertEquals(Set.of(), withoutUse, "rules without a use");
    }

    /** The names in class attributes; what an expression gives is left to {@link #FROM_VIEWS}. */
    private static Set<String> classes(String text) {
        return all(CLASS_ATTRIBUTE, text).stream()
                .flatMap(value -> Stream.of(value.replaceAll("\\{[^}]*}", " ").split("\\s+")))
                .filter(name -> name.matches("[A-Za-z][\\w-]*"))
                .collect(Collectors.toSet());
    }

    private static List<String> layers() {
        String statement = all(Pattern.compile("@layer ([a-z, ]+);"), SHEETS.get("layers.css"))
                .get(0);
        return List.of(statement.split(", "));
    }

    private static String layer(String text) {
        List<String> layers = all(Pattern.compile("(?m)^@layer ([a-z]+) \\{"), text);
        return layers.size() == 1 ? layers.get(0) : "";
    }

    private static void declarations(BiConsumer<String, MatchResult> each) {
        SHEETS.forEach((name, text) -> text.lines()
                .map(String::strip)
                .map(DECLARATION::matcher)
                .forEach(m -> {
                    if (m.matches()) {
                        each.accept(name, m.toMatchResult());
                    }
                }));
    }

    private static List<String> all(Pattern pattern, String text) {
        return pattern.matcher(text).results().map(r -> r.group(1)).toList();
    }
}
