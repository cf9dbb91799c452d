package org.benchtrail.platform.http;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.inject.Any;
import jakarta.enterprise.inject.spi.Bean;
import jakarta.enterprise.inject.spi.BeanManager;
import jakarta.ws.rs.HttpMethod;
import jakarta.ws.rs.Path;
import java.lang.annotation.Annotation;
import java.lang.reflect.Method;
import java.util.Arrays;
import java.util.List;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** Which methods each address knows, told from the endpoints themselves: a 405 names them (RFC 9110, section 15.5.6). */
@ApplicationScoped
public class Methods {
    private record Known(Pattern address, String method) {}

    private final List<Known> known;

    Methods(BeanManager beans) {
        known = beans.getBeans(Object.class, Any.Literal.INSTANCE).stream()
                .map(Bean::getBeanClass)
                .filter(type -> type.isAnnotationPresent(Path.class))
                .distinct()
                .flatMap(Methods::of)
                .toList();
    }

    /** The methods of an address, by the alphabet; none if there is no such address. */
    public TreeSet<String> of(String path) {
        TreeSet<String> methods = new TreeSet<>();
        known.stream().filter(k -> k.address().matcher(path).matches()).forEach(k -> methods.add(k.method()));
        if (methods.contains(HttpMethod.GET)) {
            methods.add(HttpMethod.HEAD);
        }
        if (!methods.isEmpty()) {
            methods.add(HttpMethod.OPTIONS);
        }
        return methods;
    }

    private static Stream<Known> of(Class<?> type) {
        return Arrays.stream(type.getDeclaredMethods())
                .flatMap(endpoint -> Arrays.stream(endpoint.getAnnotations())
                        .map(Annotation::annotationType)
                        .filter(verb -> verb.isAnnotationPresent(HttpMethod.class))
                        .map(verb -> new Known(
                                address(type, endpoint),
                                verb.getAnnotation(HttpMethod.class).value())));
    }

    private static Pattern address(Class<?> type, Method endpoint) {
        String joined = "/" + type.getAnnotation(Path.class).value() + "/" + below(endpoint.getAnnotation(Path.class));
        StringBuilder pattern = new StringBuilder();
        for (String part : joined.replaceAll("/+", "/").replaceFirst("/$", "").split("(?=\\{)|(?<=})")) {
            pattern.append(part.startsWith("{") ? variable(part) : Pattern.quote(part));
        }
        return Pattern.compile(pattern + "/?");
    }

    private static String below(@Nullable Path path) {
        return path == null ? "" : path.value();
    }

    /** A variable is one part of the address, unless it says otherwise, as in {@code {path:.+}}. */
    private static String variable(String braced) {
        int colon = braced.indexOf(':');
        return colon < 0 ? "[^/]+" : "(?:" + braced.substring(colon + 1, braced.length() - 1) + ")";
    }
}
