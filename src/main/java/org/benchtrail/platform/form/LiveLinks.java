package org.benchtrail.platform.form;

/**
 * Takes links out of a page that lead to a place which is not on it, and leaves their words, marked {@code data-gone}. A refusal
 * names the field that was wrong, but the form that had the field may be gone by then: somebody else decided meanwhile, or the step
 * was left.
 */
final class LiveLinks {
    private static final String OPENS = "<a href=\"#";
    private static final String CLOSES = "</a>";

    private LiveLinks() {}

    /** The page with only such links within it as lead somewhere. */
    static String in(String page) {
        StringBuilder live = new StringBuilder(page.length());
        int done = 0;
        for (int at = page.indexOf(OPENS); at >= 0; at = page.indexOf(OPENS, done)) {
            int quote = page.indexOf('"', at + OPENS.length());
            int words = page.indexOf('>', quote) + 1;
            int end = page.indexOf(CLOSES, words);
            if (quote < 0 || words == 0 || end < 0) {
                break;
            }
            String place = page.substring(at + OPENS.length(), quote);
            int next = end + CLOSES.length();
            if (page.contains("id=\"" + place + '"')) {
                live.append(page, done, next);
            } else {
                live.append(page, done, at)
                        .append("<span data-gone=\"")
                        .append(place)
                        .append("\">");
                live.append(page, words, end).append("</span>");
            }
            done = next;
        }
        return live.append(page, done, page.length()).toString();
    }
}
