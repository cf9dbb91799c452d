package org.benchtrail.platform.form;

import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Map;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** What a page is asked for in its address: read leniently, where nothing is any, and written again for a link. */
public final class AskedFor {
    private AskedFor() {}

    /** The constant of that name; null, which is any, where there is none. */
    public static <E extends Enum<E>> @Nullable E choice(Class<E> choices, @Nullable String name) {
        return Arrays.stream(choices.getEnumConstants())
                .filter(c -> c.name().equals(name))
                .findFirst()
                .orElse(null);
    }

    /** The part of an address behind the question mark, in the map's order; what is empty is left out. */
    public static String query(Map<String, String> asked) {
        return asked.entrySet().stream()
                .filter(field -> !field.getValue().isEmpty())
                .map(field -> field.getKey() + "=" + URLEncoder.encode(field.getValue(), StandardCharsets.UTF_8))
                .collect(Collectors.joining("&"));
    }
}
