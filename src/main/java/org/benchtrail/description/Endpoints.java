package org.benchtrail.description;

import jakarta.ws.rs.HttpMethod;
import jakarta.ws.rs.Path;
import java.lang.reflect.Method;
import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import org.eclipse.microprofile.openapi.models.PathItem;
import org.jboss.jandex.AnnotationInstance;
import org.jboss.jandex.AnnotationTarget;
import org.jboss.jandex.IndexView;

/** The methods behind the addresses of the API. */
final class Endpoints {
    private final Map<String, Method> methods = new HashMap<>();

    Endpoints(IndexView classes) {
        classes.getAnnotations(Path.class).stream()
                .map(AnnotationInstance::target)
                .filter(target -> target.kind() == AnnotationTarget.Kind.CLASS)
                .map(target -> target.asClass().name())
                .filter(name -> name.withoutPackagePrefix().endsWith("Api"))
                .forEach(name -> add(load(name.toString())));
    }

    private static Class<?> load(String name) {
        try {
            return Class.forName(name, false, Endpoints.class.getClassLoader());
        } catch (ClassNotFoundException e) {
            throw new IllegalStateException(e);
        }
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
