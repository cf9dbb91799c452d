package org.benchtrail.description;

import jakarta.enterprise.inject.Any;
import jakarta.enterprise.inject.spi.Bean;
import jakarta.enterprise.inject.spi.BeanManager;
import jakarta.ws.rs.HttpMethod;
import jakarta.ws.rs.Path;
import java.lang.reflect.Method;
import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import org.eclipse.microprofile.openapi.models.PathItem;

/** The methods behind the addresses of the API. */
final class Endpoints {
    private final Map<String, Method> methods = new HashMap<>();

    Endpoints(BeanManager beans) {
        beans.getBeans(Object.class, Any.Literal.INSTANCE).stream()
                .map(Bean::getBeanClass)
                .filter(type -> type.isAnnotationPresent(Path.class)
                        && type.getSimpleName().endsWith("Api"))
                .distinct()
                .forEach(this::add);
    }

    private void add(Class<?> type) {
        for (Method method : type.getDeclaredMethods()) {
            Arrays.stream(method.getAnnotations())
                    .map(annotation -> annotation.annotationType().getAnnotation(HttpMethod.class))
                    .filter(java.util.Objects::nonNull)
                    .forEach(verb -> methods.put(verb.value() + " " + address(type, method), method));
        }
    }

    private static String address(Class<?> type, Method method) {
        Path own = method.getAnnotation(Path.class);
        String joined = "/" + type.getAnnotation(Path.class).value() + "/" + (own == null ? "" : own.value());
        return joined.replaceAll("/+", "/").replaceFirst("(?<=.)/$", "");
    }

    Optional<Method> find(PathItem.HttpMethod verb, String address) {
        return Optional.ofNullable(methods.get(verb.name() + " " + address));
    }
}
