package org.benchtrail.core;

import java.util.Collection;
import java.util.Comparator;
import java.util.Locale;

/** How far apart two spellings are, without regard to case, so that a refusal can offer what may have been meant. */
public final class Spelling {
    private Spelling() {}

    /**
     * The known word nearest to what was typed; the first of several that are as near.
     *
     * @throws IllegalArgumentException if no word is known
     */
    public static String nearest(String typed, Collection<String> known) {
        return known.stream()
                .min(Comparator.comparingInt(word -> edits(typed, word)))
                .orElseThrow(() -> new IllegalArgumentException("no word is known"));
    }

    /** Levenshtein's distance: insertions, deletions and replacements that turn one spelling into the other. */
    public static int edits(String typed, String known) {
        String a = typed.toLowerCase(Locale.ROOT);
        String b = known.toLowerCase(Locale.ROOT);
        int[] row = new int[b.length() + 1];
        for (int j = 0; j <= b.length(); j++) {
            row[j] = j;
        }
        for (int i = 1; i <= a.length(); i++) {
            int diagonal = row[0];
            row[0] = i;
            for (int j = 1; j <= b.length(); j++) {
                int replaced = diagonal + (a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1);
                diagonal = row[j];
                row[j] = Math.min(replaced, 1 + Math.min(row[j], row[j - 1]));
            }
        }
        return row[b.length()];
    }
}
