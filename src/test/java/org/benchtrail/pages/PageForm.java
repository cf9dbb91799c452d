package org.benchtrail.pages;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A form of a page, as its template writes it with every tag and part put in.
 *
 * @param template the page's template, such as {@code people/me.html}
 * @param method {@code get} or {@code post}
 * @param action the path it is sent to; a part that only a request knows is a star
 * @param fields the names of its fields, with stars likewise
 */
record PageForm(String template, String method, String action, SortedSet<String> fields) {
    private static final Pattern WITH_CONTENT = Pattern.compile("(?s)\\{#(\\w+form|question)\\b([^}]*)}(.*?)\\{/\\1}");
    private static final Pattern WITHOUT_CONTENT = Pattern.compile("(?s)\\{#(\\w+)\\b((?:[^}/]|/(?!}))*)/}");
    private static final Pattern LET = Pattern.compile("(?s)\\{#let (\\w+)=([^}]+)}(.*?)\\{/let}");
    private static final Pattern ARGUMENT = Pattern.compile("(\\w+)=('[^']*'|\"[^\"]*\"|[^\\s(]+\\([^)]*\\)|\\S+)");
    private static final Pattern FORM = Pattern.compile("(?s)<form\\b((?:\\{[^}]*}|[^>])*)>(.*?)</form>");
    private static final Pattern FIELD =
            Pattern.compile("(?s)<(?:input|select|textarea|button)\\b((?:\\{[^}]*}|[^>])*)>");
    private static final Pattern SENT_ELSEWHERE = Pattern.compile("formaction=\"([^\"]*)\"");
    private static final Pattern EITHER = Pattern.compile("\\{#if [^}]*}|\\{#else}|\\{/if}");
    private static final Pattern COMPONENT_OF_ONE =
            Pattern.compile("\\{[\\w.:]*\\b(?:field|about)\\('([^']+)', [^,}]+, '([^']+)'\\)}");
    private static final Pattern KEY_OF_MAP = Pattern.compile("\\{[\\w.:]*\\bkey\\('([^']+)', [^}]+\\)}");

    /** All forms of all pages. */
    static List<PageForm> all() {
        SortedMap<String, String> templates = Sources.templates();
        List<PageForm> forms = new ArrayList<>();
        templates.forEach((name, text) -> {
            if (text.contains("{#include layout}")) {
                forms.addAll(in(name, put(text.replace("{#include layout}", ""), templates)));
            }
        });
        forms.addAll(in("layout.html", put(templates.get("layout.html"), templates)));
        return forms;
    }

    /** The forms of a page in which every tag and part is put in. */
    private static List<PageForm> in(String template, String page) {
        List<PageForm> forms = new ArrayList<>();
        Matcher form = FORM.matcher(page);
        while (form.find()) {
            SortedSet<String> fields = new TreeSet<>();
            List<String> actions = new ArrayList<>(List.of(attribute("action", form.group(1))));
            FIELD.matcher(form.group(2))
                    .results()
                    .map(f -> attribute("name", f.group(1)))
                    .filter(f -> !f.isEmpty())
                    .forEach(f -> fields.add(starred(f)));
            SENT_ELSEWHERE.matcher(form.group(2)).results().forEach(m -> actions.add(m.group(1)));
            for (String action : actions) {
                for (String either :
                        EITHER.splitAsStream(action).filter(a -> !a.isEmpty()).toList()) {
                    String path = starred(either).replaceAll("[?#].*", "");
                    forms.add(new PageForm(template, attribute("method", form.group(1)), path, fields));
                }
            }
        }
        return forms;
    }

    private static String put(String text, SortedMap<String, String> templates) {
        String done = LET.matcher(text).replaceAll(m -> quoted(with(Map.of(m.group(1), m.group(2)), m.group(3))));
        done = WITH_CONTENT
                .matcher(done)
                .replaceAll(m -> quoted(with(arguments(m.group(2)), templates.get("tags/" + m.group(1) + ".html"))
                        .replace("{nested-content}", m.group(3))));
        done = WITHOUT_CONTENT
                .matcher(done)
                .replaceAll(m -> quoted(part(m.group(1), m.group(2).strip(), templates)));
        return done.equals(text) ? done : put(done, templates);
    }

    private static String part(String tag, String arguments, SortedMap<String, String> templates) {
        String file = tag.equals("include") ? arguments.split("\\s+")[0] + ".html" : "tags/" + tag + ".html";
        return templates.containsKey(file) ? with(arguments(arguments), templates.get(file)) : "";
    }

    private static Map<String, String> arguments(String text) {
        Map<String, String> arguments = new LinkedHashMap<>();
        ARGUMENT.matcher(text).results().forEach(m -> arguments.put(m.group(1), m.group(2)));
        return arguments;
    }

    /** A text with what it was given in the places that ask for it. */
    private static String with(Map<String, String> arguments, String text) {
        String done = text;
        for (Map.Entry<String, String> a : arguments.entrySet()) {
            String value = a.getValue();
            boolean words = value.startsWith("'") || value.startsWith("\"");
            String given = words ? value.substring(1, value.length() - 1) : "{" + value + "}";
            done = done.replaceAll("\\{" + a.getKey() + "( \\?: [^}]*)?}", quoted(given));
        }
        return done;
    }

    private static String attribute(String name, String attributes) {
        Matcher found =
                Pattern.compile("\\b" + name + "=\"((?:\\{[^}]*}|[^\"])*)\"").matcher(attributes);
        return found.find() ? found.group(1) : "";
    }

    private static String starred(String name) {
        String known =
                name.replace("{inject:formToken.field}", "csrf-token").replace("{inject:formKey.field}", "csrf-key");
        known = COMPONENT_OF_ONE.matcher(known).replaceAll("$1-*.$2");
        known = KEY_OF_MAP.matcher(known).replaceAll("$1.*");
        // where a job sheet stands: a ticket's, whose forms are all that there are
        return known.replace("{v.base}", "/tickets/{v.number}").replaceAll("\\{[^}]*}", "*");
    }

    private static String quoted(String text) {
        return Matcher.quoteReplacement(text);
    }
}
