package org.benchtrail.knowledge;

import java.util.ArrayList;
import java.util.List;

/**
 * A text with the words that a search found in it. It is kept in pieces, so that a page marks them and escapes every piece;
 * no markup ever comes out of the database.
 */
public record Highlighted(List<Piece> pieces) {
    /** Private-use characters, which no text has a use for, around what was found. */
    static final char START = '\uE000';

    static final char STOP = '\uE001';

    public Highlighted {
        pieces = List.copyOf(pieces);
    }

    /** A run of text. */
    public record Piece(String text, boolean hit) {}

    /** Reads a text in which {@link #START} and {@link #STOP} stand around what was found. */
    static Highlighted read(String text) {
        List<Piece> pieces = new ArrayList<>();
        boolean hit = false;
        int from = 0;
        for (int i = 0; i <= text.length(); i++) {
            if (i == text.length() || text.charAt(i) == START || text.charAt(i) == STOP) {
                if (i > from) {
                    pieces.add(new Piece(text.substring(from, i), hit));
                }
                hit = i < text.length() && text.charAt(i) == START;
                from = i + 1;
            }
        }
        return new Highlighted(pieces);
    }

    static Highlighted plain(String text) {
        return new Highlighted(text.isEmpty() ? List.of() : List.of(new Piece(text, false)));
    }

    public boolean isEmpty() {
        return pieces.isEmpty();
    }

    /** Whether anything was found in it. */
    public boolean hit() {
        return pieces.stream().anyMatch(Piece::hit);
    }

    /** The text alone. */
    @Override
    public String toString() {
        StringBuilder text = new StringBuilder();
        pieces.forEach(p -> text.append(p.text()));
        return text.toString();
    }
}
