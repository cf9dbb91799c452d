package org.benchtrail.pages;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Whether colours that stand on each other can be told apart, in light and in dark. Ratio of contrast as in Web Content
 * Accessibility Guidelines 2.2, W3C 2023: 4.5 for text (1.4.3), 3 for what bounds a control (1.4.11).
 */
class ContrastTest {
    private static final Pattern TOKEN = Pattern.compile("--([a-z-]+): (#[0-9a-f]{6});");
    private static final List<Map<String, String>> SCHEMES = schemes();

    private static List<Map<String, String>> schemes() {
        String[] parts = Sources.styleSheets().get("tokens.css").split("@media");
        Map<String, String> light = colours(parts[0]);
        Map<String, String> dark = new HashMap<>(light);
        assertTrue(parts[1].contains("prefers-color-scheme: dark"));
        dark.putAll(colours(parts[1]));
        return List.of(light, dark);
    }

    private static Map<String, String> colours(String text) {
        Map<String, String> found = new HashMap<>();
        Matcher token = TOKEN.matcher(text);
        while (token.find()) {
            found.put(token.group(1), token.group(2));
        }
        return found;
    }

    /** WCAG 2.2, "relative luminance". */
    private static double luminance(String colour) {
        double[] weight = {0.2126, 0.7152, 0.0722};
        double sum = 0;
        for (int i = 0; i < weight.length; i++) {
            double c = Integer.parseInt(colour.substring(1 + 2 * i, 3 + 2 * i), 16) / 255.0;
            sum += weight[i] * (c <= 0.04045 ? c / 12.92 : Math.pow((c + 0.055) / 1.055, 2.4));
        }
        return sum;
    }

    private static double contrast(String one, String other) {
        double a = luminance(one);
        double b = luminance(other);
        return (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
    }

    @Test
    void contrast_isThatOfTheGuidelines() {
        assertEquals(21, contrast("#000000", "#ffffff"), 1e-9, "the largest there is");
        assertEquals(4.48, contrast("#777777", "#ffffff"), 0.005, "the grey that just misses 4.5");
    }

    @ParameterizedTest
    @CsvSource({
        "ink, paper",
        "ink, sheet",
        "ink, wash",
        "ink, bad-wash",
        "pencil, paper",
        "pencil, sheet",
        "pencil, wash",
        "teal, paper",
        "teal, sheet",
        "teal, wash",
        "on-teal, teal",
        "on-band, band",
        "on-open, open",
        "open-text, paper",
        "open-text, sheet",
        "open-text, wash",
        "good, paper",
        "good, sheet",
        "bad, paper",
        "bad, sheet",
        "bad, bad-wash"
    })
    void text_isReadOnItsGround(String text, String ground) {
        atLeast(4.5, text, ground);
    }

    @ParameterizedTest
    @CsvSource({"edge, paper", "edge, sheet", "edge, wash", "open-edge, paper", "open-edge, sheet", "open, band"})
    void edge_isSeenOnItsGround(String edge, String ground) {
        atLeast(3, edge, ground);
    }

    private static void atLeast(double least, String one, String other) {
        for (Map<String, String> scheme : SCHEMES) {
            double ratio = contrast(scheme.get(one), scheme.get(other));
            assertTrue(ratio >= least, () -> "%s on %s: %.2f in %s".formatted(one, other, ratio, scheme));
        }
    }
}
